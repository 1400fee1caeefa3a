//! Makes the linker refuse what is not defined anywhere; only a real link shows it.

fn main() {
    println!("cargo::rerun-if-changed=build.rs");
    println!("cargo::rustc-cdylib-link-arg=-Wl,-z,defs");
    // memcpy and its like.
    println!("cargo::rustc-cdylib-link-arg=-lc");
}
