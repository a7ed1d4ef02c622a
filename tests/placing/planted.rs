//! Files and links that somebody planted where a run looks for its own: none leads out of the output.
#![cfg(unix)]

use super::{Shown, Site, tree};
use std::os::unix::fs::symlink;

/// A site with a folder that is none of the program's business.
fn site() -> Site {
    let site = Site::new();
    site.write("docs/a.txt", "a");
    site.write("docs/deep/b.txt", "b");
    site
}

/// A list that claims the files of `docs`, with their right size and hash, under these paths.
fn claims(paths: &[&str]) -> String {
    let hash = blake3::hash(b"a").to_hex();
    let entry = |path: &&str| format!(r#"{{"path":"{path}","size":1,"blake3":"{hash}"}}"#);
    format!(r#"{{"files":[{}]}}"#, paths.iter().map(entry).collect::<Vec<_>>().join(","))
}

#[test]
fn nothing_in_a_work_folder_is_believed() {
    let site = site();
    let docs = tree(&site.path("docs"));
    let paths = r#"["../../docs/a.txt","../docs/a.txt","a.txt"]"#;
    let journal = format!(r#"{{"moved":{paths},"removed":{paths}}}"#);
    for tree_name in ["new", "next", "old"] {
        site.write(".output.fittingcards/journal.json", &journal);
        site.write(".output.fittingcards/other/a.txt", "theirs");
        symlink("../docs", site.path(".output.fittingcards").join(tree_name)).unwrap();
        site.render();
        assert_eq!(tree(&site.path("docs")), docs, "{tree_name}");
        assert!(matches!(site.shown(), Shown::Whole(_)));
        assert!(!site.path("output/a.txt").exists() && !site.path("output/deep").exists());
        std::fs::remove_dir_all(site.path(".output.fittingcards")).unwrap();
    }
}

#[test]
fn a_work_folder_with_a_tree_in_it_does_not_become_output() {
    let site = site();
    for name in ["new", "next", "old"] {
        site.write(&format!(".output.fittingcards/{name}/planted.html"), "planted");
    }
    site.render();
    assert!(!site.path("output/planted.html").exists());
}

#[test]
fn a_work_folder_or_lock_that_is_a_link_is_refused() {
    for link in [".output.fittingcards", ".output.fittingcards/lock"] {
        let site = site();
        let docs = tree(&site.path("docs"));
        std::fs::create_dir_all(site.path(link).parent().unwrap()).unwrap();
        let target = if link.ends_with("lock") { "../docs/a.txt" } else { "docs" };
        symlink(target, site.path(link)).unwrap();
        let stderr = site.refused(&[], 2);
        assert!(stderr.contains("not written by this program"), "{stderr}");
        assert_eq!(tree(&site.path("docs")), docs);
        assert!(site.path(link).is_symlink());
    }
}

#[test]
fn a_list_that_names_files_elsewhere_gets_none_of_them() {
    for list in ["manifest.json", "manifest.being-replaced.json"] {
        for others in [None, Some("output/mine.txt")] {
            let site = site();
            let docs = tree(&site.path("docs"));
            std::fs::create_dir(site.output()).unwrap();
            symlink("../docs", site.path("output/old")).unwrap();
            let paths = ["../docs/a.txt", "old/a.txt", "old/../../docs/a.txt", "/docs/a.txt"];
            site.write(&format!("output/{list}"), &claims(&paths));
            others.inspect(|path| site.write(path, "mine"));
            site.render();
            assert_eq!(tree(&site.path("docs")), docs, "{list}");
            assert!(site.path("output/old").is_symlink(), "what is not ours stays, links too");
            assert!(matches!(site.shown(), Shown::Whole(_)));
        }
    }
}

#[test]
fn a_link_in_the_place_of_a_folder_or_file_of_ours_is_refused() {
    for (link, target) in
        [("cards", "../docs"), ("booklet", "nowhere"), ("data/cards.csv", "../../docs/a.txt")]
    {
        let site = site();
        let docs = tree(&site.path("docs"));
        site.write("output/manifest.json", &claims(&["cards/a.txt", "data/cards.csv"]));
        std::fs::create_dir_all(site.path("output").join(link).parent().unwrap()).unwrap();
        symlink(target, site.path("output").join(link)).unwrap();
        let stderr = site.refused(&[], 2);
        assert!(stderr.contains(&format!("output/{link}")), "{stderr}");
        assert_eq!(tree(&site.path("docs")), docs);
        site.assert_holds(&["docs", "output"]);
    }
}
