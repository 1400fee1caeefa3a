//! Version and caution.

use core::ffi::c_char;

use crate::border::Text;
use crate::status::answer;

/// Version of the header: major. The number in the name of the shared library.
pub const SW_VERSION_MAJOR: u32 = 0;
/// Version of the header: minor.
pub const SW_VERSION_MINOR: u32 = 1;
/// Version of the header: patch.
pub const SW_VERSION_PATCH: u32 = 0;

/// Version of the library as a number: major * 65536 + minor * 256 + patch. Compare it with the header's.
#[unsafe(no_mangle)]
pub extern "C" fn sw_version_number() -> u32 {
    SW_VERSION_MAJOR.wrapping_shl(16) | SW_VERSION_MINOR.wrapping_shl(8) | SW_VERSION_PATCH
}

/// Version of the library as a text, as in `0.1.0`.
#[unsafe(no_mangle)]
pub extern "C" fn sw_version_text(buf: *mut c_char, len: usize, needed: *mut usize) -> u32 {
    answer(core::ptr::null_mut(), || Text::new(buf, len, needed, 1)?.put(|out| Ok(out.write_str(seamwright::VERSION)?)))
}

/// The caution that goes with every result. Show it.
#[unsafe(no_mangle)]
pub extern "C" fn sw_caution_text(buf: *mut c_char, len: usize, needed: *mut usize) -> u32 {
    answer(core::ptr::null_mut(), || Text::new(buf, len, needed, 1)?.put(|out| Ok(out.write_str(seamwright::CAUTION)?)))
}
