//! Writes the seeds of a target into a folder, a file each: seeds TARGET FOLDER.

#[expect(dead_code, reason = "seeds are written here, not run")]
mod targets;

fn main() {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let [name, folder] = arguments.as_slice() else { panic!("usage: seeds TARGET FOLDER") };
    let target = targets::named(name).expect("a target of this name");
    std::fs::create_dir_all(folder).expect("the folder can be made");
    for (number, seed) in (target.seeds)().into_iter().enumerate() {
        std::fs::write(format!("{folder}/seed-{number:03}"), seed).expect("the seed can be written");
    }
}
