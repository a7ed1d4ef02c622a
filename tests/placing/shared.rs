//! An output folder that others use too: what they keep, save and set in it stays.

use super::{Shown, Site, said};
use std::fs;
use std::path::Path;
use std::sync::atomic::{AtomicBool, Ordering};
use std::thread;

/// Saves a file as editors do, under another name first, again and again while runs go. `may_fail`: whether a
/// save may fail, and a read find the one before, while the folder is taken away.
fn saved_during(site: &Site, file: &str, runs: usize, may_fail: bool) {
    let path = site.path(file);
    let draft = path.with_file_name(".draft");
    let done = AtomicBool::new(false);
    thread::scope(|scope| {
        let saver = scope.spawn(|| {
            let mut saves = 0;
            while !done.load(Ordering::Relaxed) {
                let text = (saves + 1).to_string();
                let saved = fs::write(&draft, &text).and_then(|()| fs::rename(&draft, &path));
                assert!(may_fail || saved.is_ok(), "save {text}: {saved:?}");
                saves += usize::from(saved.is_ok());
                let kept = fs::read_to_string(&path).unwrap();
                assert!(may_fail || kept == text, "save {text} became {kept}");
                thread::yield_now();
            }
            saves
        });
        let ended: Vec<_> = (0..runs)
            .map(|run| {
                site.change_hands(run);
                site.rendering().output().unwrap()
            })
            .collect();
        done.store(true, Ordering::Relaxed);
        ended.iter().for_each(|ended| assert!(ended.status.success(), "{}", said(ended)));
        let saves = saver.join().unwrap();
        assert!(saves > runs, "too few saves to try anything: {saves}");
        assert_eq!(fs::read_to_string(&path).unwrap(), saves.to_string());
    });
    assert!(matches!(site.shown(), Shown::Whole(_)), "{:?}", site.shown());
}

#[test]
fn a_file_of_somebody_else_keeps_every_save() {
    let site = Site::rendered();
    for file in ["output/notes.txt", "output/mine/notes.txt", "output/cards/notes.txt"] {
        site.write(file, "0");
        saved_during(&site, file, 4, false);
        fs::remove_file(site.path(file)).unwrap();
        site.assert_holds(&["output"]);
    }
}

/// A hidden file at the top does not keep the output from being put in place at once; a save that comes at
/// that very moment may fail, and says so, but none that was made is lost.
#[test]
fn a_hidden_file_keeps_every_save_that_was_made() {
    let site = Site::rendered();
    site.write("output/.ignored", "0");
    saved_during(&site, "output/.ignored", 6, true);
}

#[test]
fn files_that_are_made_during_a_run_stay() {
    let site = Site::rendered();
    let mut child = site.begin();
    let mut made = 0;
    while child.try_wait().unwrap().is_none() {
        let folder = site.output().join("theirs");
        let write = || fs::write(folder.join(format!("{made}.txt")), "theirs");
        made += usize::from(fs::create_dir_all(&folder).and_then(|()| write()).is_ok());
    }
    assert!(child.wait().unwrap().success() && made > 0);
    assert_eq!(fs::read_dir(site.path("output/theirs")).unwrap().count(), made);
    site.assert_holds(&["output"]);
}

#[test]
fn a_hidden_file_does_not_hinder_and_stays() {
    let site = Site::rendered();
    site.write("output/.gitignore", "*\n");
    site.render();
    assert_eq!(site.read("output/.gitignore"), "*\n");
    assert!(matches!(site.shown(), Shown::Whole(_)));
}

#[cfg(unix)]
mod rights {
    use super::*;
    use std::os::unix::fs::{MetadataExt, PermissionsExt};

    fn set(path: &Path, mode: u32) {
        fs::set_permissions(path, fs::Permissions::from_mode(mode)).unwrap();
    }

    fn mode(path: &Path) -> u32 {
        fs::metadata(path).unwrap().mode() & 0o7777
    }

    #[test]
    fn folders_keep_their_rights() {
        for theirs in [false, true] {
            let site = Site::rendered();
            let (output, cards) = (site.output(), site.path("output/cards"));
            set(&cards, 0o2750);
            set(&output, 0o750);
            if theirs {
                site.write("output/mine/notes.txt", "mine");
                set(&site.path("output/mine"), 0o2700);
            }
            site.change_hands(1);
            site.render();
            assert_eq!((mode(&output), mode(&cards)), (0o750, 0o2750));
            assert!(!theirs || mode(&site.path("output/mine")) == 0o2700);
        }
    }

    #[test]
    fn a_folder_that_others_use_stays_the_same_folder() {
        let site = Site::rendered();
        let folder = || fs::metadata(site.output()).unwrap().ino();
        site.write("output/mine/notes.txt", "mine");
        let before = (folder(), fs::metadata(site.path("output/mine")).unwrap().ino());
        site.change_hands(1);
        site.render();
        assert_eq!((folder(), fs::metadata(site.path("output/mine")).unwrap().ino()), before);
    }

    #[test]
    fn the_folder_that_the_caller_stands_in_stays() {
        let site = Site::rendered();
        let before = fs::metadata(site.output()).unwrap().ino();
        for (folder, output) in [("output", "."), ("output/booklet", "..")] {
            let mut command = site.rendering();
            command.current_dir(site.path(folder)).args(["--output", output, "--catalogue"]);
            let ended = command.arg(site.path("content")).output().unwrap();
            assert!(ended.status.success(), "{}", said(&ended));
            assert_eq!(fs::metadata(site.output()).unwrap().ino(), before);
            assert!(matches!(site.shown(), Shown::Whole(_)));
        }
    }
}
