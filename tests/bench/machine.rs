//! What the machine tells (Linux): its name, time of the processor, memory.

use std::fs::read_to_string;

/// The processor and how many cores there are.
pub fn name() -> String {
    let info = read_to_string("/proc/cpuinfo").unwrap_or_default();
    let model = info.lines().find_map(|line| line.strip_prefix("model name")?.split_once(": "));
    let cores = std::thread::available_parallelism().map_or(1, usize::from);
    format!("{}, {cores} cores", model.map_or("a processor without a name", |(_, name)| name))
}

/// What this process has taken of the processor so far, in seconds; 0 where the machine does not tell.
pub fn cpu_seconds() -> f64 {
    let text = read_to_string("/proc/self/stat").unwrap_or_default();
    let fields = text.rsplit_once(')').map_or("", |(_, rest)| rest).split_whitespace();
    // utime and stime, the 14th and 15th field (proc(5)), in hundredths of a second.
    let ticks: f64 = fields.skip(11).take(2).filter_map(|field| field.parse::<f64>().ok()).sum();
    ticks / 100.0
}

/// The most memory that this process had at once, in MiB.
pub fn most_memory() -> Option<f64> {
    let status = read_to_string("/proc/self/status").ok()?;
    let line = status.lines().find(|line| line.starts_with("VmHWM:"))?;
    let kibibytes: f64 = line.split_whitespace().nth(1)?.parse().ok()?;
    Some(kibibytes / 1024.0)
}
