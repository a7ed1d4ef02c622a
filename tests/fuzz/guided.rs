//! The long run: libFuzzer looks for inputs that reach code that none before has reached. FUZZ_TARGET names the target.
#![no_main]

mod mutate;
mod targets;

use mutate::Pool;
use std::sync::LazyLock;
use targets::Target;

static TARGET: LazyLock<&'static Target> = LazyLock::new(|| {
    let name = std::env::var("FUZZ_TARGET").expect("FUZZ_TARGET names a target");
    targets::named(&name).expect("a target of this name")
});
static POOL: LazyLock<Pool> = LazyLock::new(|| Pool::new((TARGET.seeds)()));

libfuzzer_sys::fuzz_target!(|input: &[u8]| (TARGET.run)(input));

// Half of the changes are by line and word, since bytes seldom make another YAML or XML file.
libfuzzer_sys::fuzz_mutator!(|data: &mut [u8], size: usize, most: usize, seed: u32| {
    let mut dice = fastrand::Rng::with_seed(u64::from(seed));
    if dice.bool() {
        return libfuzzer_sys::fuzzer_mutate(data, size, most);
    }
    let changed = POOL.changed(&data[..size], &mut dice);
    let size = changed.len().min(most);
    data[..size].copy_from_slice(&changed[..size]);
    size
});
