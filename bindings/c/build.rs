//! The name under which programs look for the shared library.

fn main() {
    println!("cargo::rerun-if-changed=build.rs");
    let major = std::env::var("CARGO_PKG_VERSION_MAJOR").unwrap_or_default();
    if std::env::var("CARGO_CFG_TARGET_OS").as_deref() == Ok("linux") {
        println!("cargo::rustc-cdylib-link-arg=-Wl,-soname,libseamwright.so.{major}");
    }
}
