//! The long run: libFuzzer looks for inputs that reach code that none before has reached. FUZZ_TARGET names the target,
//! FUZZ_SEEDS the folder that its seeds are written to before they are read.
#![no_main]

#[expect(dead_code, reason = "the short run has its own way to choose seeds")]
mod mutate;
#[expect(dead_code, reason = "how long a long run is, its command line says")]
mod targets;

use mutate::Pool;
use std::sync::LazyLock;
use targets::Target;

static TARGET: LazyLock<&'static Target> = LazyLock::new(|| {
    let name = std::env::var("FUZZ_TARGET").expect("FUZZ_TARGET names a target");
    targets::named(&name).expect("a target of this name")
});
static POOL: LazyLock<Pool> = LazyLock::new(|| Pool::new((TARGET.seeds)()));

libfuzzer_sys::fuzz_target!(init: write_seeds(), |input: &[u8]| (TARGET.run)(input));

fn write_seeds() {
    let folder = std::env::var("FUZZ_SEEDS").expect("FUZZ_SEEDS names a folder");
    for (number, seed) in (TARGET.seeds)().into_iter().enumerate() {
        std::fs::write(format!("{folder}/seed-{number:03}"), seed).expect("the seed can be written");
    }
}

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
