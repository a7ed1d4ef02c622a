//! How runs end that do not come to their end: nothing is left of them.

use super::{Shown, Site, listed, shown};
use std::fs;

#[test]
fn a_run_that_is_refused_leaves_no_folder() {
    let site = Site::new();
    site.write("content/fittings/broken.yaml", "number: F-999\n");
    site.refused(&["--output", "a/b/output"], 1);
    site.refused(&["--output", "a/b/output", "--only", "F-0"], 1);
    site.assert_holds(&[]);
    fs::remove_file(site.path("content/fittings/broken.yaml")).unwrap();
    site.refused(&["--output", "a/b/output", "--only", "nothing"], 2);
    site.refused(&["--output", "a/b/output", "--preview-dpi", "1000000000"], 2);
    site.assert_holds(&[]);
}

/// The folders of what goes in, and that of version control, are no place for outputs.
#[test]
fn an_output_where_something_is_read_is_one_finding() {
    let site = Site::rendered();
    let before = site.shown();
    site.write("layouts/cards/style.yaml", "{}\n");
    site.write("repository/.git/HEAD", "ref: refs/heads/main\n");
    for output in
        [".", "content", "content/output", "content/a/b", "layouts", "./content/../layouts/x", "repository"]
    {
        let stderr = site.refused(&["--output", output], 2);
        assert_eq!(stderr.lines().count(), 1, "{output}: {stderr}");
        assert!(stderr.contains("name another folder for the output"), "{output}: {stderr}");
    }
    assert_eq!(site.shown(), before);
    site.assert_holds(&["layouts", "output", "repository"]);
    assert_eq!(listed(&site.path("repository")), [".git"]);
    assert!(!site.path("content/output").exists() && !site.path("content/a").exists());
}

#[cfg(unix)]
#[test]
fn an_output_that_a_link_leads_to_what_is_read_is_refused() {
    let site = Site::new();
    std::os::unix::fs::symlink("content", site.path("output")).unwrap();
    assert!(site.refused(&[], 2).contains("name another folder for the output"));
    site.assert_holds(&["output"]);
}

#[cfg(unix)]
mod signals {
    use super::*;
    use std::os::unix::process::ExitStatusExt;
    use std::process::{Child, Command};
    use std::thread::sleep;
    use std::time::Duration;

    fn send(child: &Child, signal: i32) {
        let sent =
            Command::new("kill").args([format!("-{signal}"), child.id().to_string()]).status().unwrap();
        assert!(sent.success());
    }

    fn wait_for(what: &str, done: impl Fn() -> bool) {
        let looks = 6000;
        let seen = (0..looks).any(|_| {
            done() || {
                sleep(Duration::from_millis(10));
                false
            }
        });
        assert!(seen, "{what} did not come");
    }

    #[test]
    fn a_run_that_is_interrupted_leaves_nothing_but_the_earlier_output() {
        const INTERRUPT: i32 = 2;
        const END: i32 = 15;
        let site = Site::rendered();
        let work = site.path(".output.fittingcards/new/cards");
        for (turn, signal) in [INTERRUPT, END, INTERRUPT, END].into_iter().enumerate() {
            site.change_hands(turn);
            let before = site.shown();
            let mut child = site.begin();
            wait_for("the first card", || work.exists());
            sleep(Duration::from_millis(40) * u32::try_from(turn).unwrap());
            send(&child, signal);
            let ended = child.wait().unwrap();
            assert!(ended.signal() == Some(signal) || ended.success(), "{ended}");
            assert!(ended.success() || site.shown() == before, "{:?}", site.shown());
            site.assert_holds(&["output"]);
        }
    }

    #[test]
    fn watching_goes_on_whatever_happens_to_the_files_until_it_is_ended() {
        let site = Site::new();
        let said_here = site.path("output.log");
        let log = fs::File::create(&said_here).unwrap();
        let mut command = site.rendering();
        let mut child =
            command.args(["--watch"]).stdout(log.try_clone().unwrap()).stderr(log).spawn().unwrap();
        let says = |what: &str| fs::read_to_string(&said_here).unwrap().contains(what);
        let renders = |owner: usize| {
            site.change_hands(owner);
            let name = format!("Works {owner}");
            let page = || fs::read_to_string(site.path("output/data/catalogue.json")).unwrap_or_default();
            wait_for(&name, || page().contains(&name));
        };
        renders(1);
        std::os::unix::fs::symlink("parts", site.path("content/linked")).unwrap();
        wait_for("word of the link", || says("this is a link"));
        fs::remove_file(site.path("content/linked")).unwrap();
        renders(2);
        let name = <std::ffi::OsStr as std::os::unix::ffi::OsStrExt>::from_bytes(b"content/\xff.yaml");
        fs::write(site.folder.path().join(name), "").unwrap();
        wait_for("word of the name", || says("the name of this file is not UTF-8"));
        fs::remove_file(site.folder.path().join(name)).unwrap();
        renders(3);
        fs::rename(site.path("content"), site.path("elsewhere")).unwrap();
        wait_for("word of the folder", || says("error: "));
        fs::rename(site.path("elsewhere"), site.path("content")).unwrap();
        renders(4);
        assert!(child.try_wait().unwrap().is_none(), "it goes on");
        send(&child, 15);
        assert_eq!(child.wait().unwrap().signal(), Some(15));
        assert!(matches!(shown(&site.output()), Shown::Whole(_)));
        site.assert_holds(&["output", "output.log"]);
    }
}
