//! What an attempt may take.

use crate::targets::Target;
use std::fs::File;
use std::io::{Seek, Write};
use std::path::Path;
use std::process::Command;
use std::sync::atomic::{AtomicU64, Ordering};
use std::sync::{Arc, LazyLock};
use std::thread;
use std::time::{Duration, Instant};

/// KiB that a process may have.
const MEMORY: u32 = 1024 * 1024;
/// Seconds that an input may take.
const SECONDS: f64 = 10.0;

/// This program again; where there is a shell that can, with as much memory as it may have. What each of many threads
/// sets aside counts as memory, so they are few.
pub fn command() -> Command {
    let this = std::env::current_exe().expect("a program knows where it lies");
    if !cfg!(target_os = "linux") {
        return Command::new(this);
    }
    let mut command = Command::new("sh");
    command.envs([("RAYON_NUM_THREADS", "2"), ("MALLOC_ARENA_MAX", "2")]);
    command.args(["-c", &format!("ulimit -v {MEMORY} && exec \"$0\"")]).arg(this);
    command
}

/// Attempts, each written down before it is made, so that the input is there however the process ends.
pub struct Attempts {
    input: File,
    made: Arc<AtomicU64>,
}

impl Attempts {
    /// Keeps the input in a file; from now on the process ends when one takes too long.
    pub fn new(input: &Path) -> Self {
        let made = Arc::new(AtomicU64::new(0));
        let seen = made.clone();
        thread::spawn(move || watch(&seen));
        Self { input: File::create(input).expect("the input can be kept"), made }
    }

    /// Tries an input.
    pub fn one(&mut self, target: &Target, input: &[u8]) {
        self.keep(input).expect("the input can be kept");
        self.made.fetch_add(1, Ordering::Relaxed);
        (target.run)(input);
    }

    /// Left open from one input to the next: some file systems wait for the disk where a file is emptied and closed.
    fn keep(&mut self, input: &[u8]) -> std::io::Result<()> {
        self.input.rewind()?;
        self.input.write_all(input)?;
        self.input.set_len(input.len() as u64)
    }
}

fn watch(made: &AtomicU64) {
    let mut begun = (0, seconds());
    loop {
        thread::sleep(Duration::from_millis(500));
        let now = made.load(Ordering::Relaxed);
        if begun.0 != now {
            begun = (now, seconds());
        }
        if seconds() - begun.1 > SECONDS {
            eprintln!("more than {SECONDS} s");
            std::process::abort();
        }
    }
}

/// Seconds that this process has had of the processors, so that other work on the machine does not count; where Linux
/// does not say, seconds of the wall.
fn seconds() -> f64 {
    static BEGUN: LazyLock<Instant> = LazyLock::new(Instant::now);
    let stat = std::fs::read_to_string("/proc/self/stat").unwrap_or_default();
    let fields: Vec<&str> = stat.rsplit(')').next().unwrap_or_default().split_whitespace().collect();
    let ticks = |at: usize| fields.get(at).and_then(|field| field.parse::<f64>().ok());
    // utime and stime, in hundredths: proc_pid_stat(5).
    ticks(11)
        .zip(ticks(12))
        .map_or_else(|| BEGUN.elapsed().as_secs_f64(), |(user, system)| (user + system) / 100.0)
}
