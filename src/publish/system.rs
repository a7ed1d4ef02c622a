//! What systems do differently: swapping folders, mounts, rights.

use std::fs::Metadata;
use std::io;
use std::path::Path;

#[cfg(any(target_os = "linux", target_vendor = "apple"))]
use rustix::fs::{self, CWD};
#[cfg(any(target_os = "linux", target_vendor = "apple"))]
use std::os::unix::fs::{MetadataExt, chown};

/// Which file it is, whatever it is called: its disk and its number there.
#[cfg(any(target_os = "linux", target_vendor = "apple"))]
pub(super) fn id(file: &Metadata) -> (u64, u64) {
    (file.dev(), file.ino())
}

/// Whether files can be added to a folder and taken from it.
#[cfg(any(target_os = "linux", target_vendor = "apple"))]
pub(super) fn is_writable(folder: &Path) -> bool {
    fs::access(folder, fs::Access::WRITE_OK | fs::Access::EXEC_OK).is_ok()
}

/// On which mount a folder lies: a file goes from one to another by a change of name only within one. Two
/// mounts of one disk differ; a system too old to tell them apart tells the disk.
#[cfg(target_os = "linux")]
pub(super) fn mount(folder: &Path) -> Option<(u64, u64)> {
    let found = fs::statx(CWD, folder, fs::AtFlags::empty(), fs::StatxFlags::MNT_ID).ok()?;
    Some((fs::makedev(found.stx_dev_major, found.stx_dev_minor), found.stx_mnt_id))
}

#[cfg(not(target_os = "linux"))]
pub(super) fn mount(folder: &Path) -> Option<(u64, u64)> {
    std::fs::metadata(folder).ok().map(|folder| (id(&folder).0, 0))
}

/// Gives a folder the owner and rights of another, or says that it can't. Access lists and the like are
/// attributes; none is copied, so both must have as many.
#[cfg(any(target_os = "linux", target_vendor = "apple"))]
pub(super) fn take_rights(of: &Path, folder: &Path) -> io::Result<()> {
    let there = std::fs::symlink_metadata(of)?;
    chown(folder, Some(there.uid()), Some(there.gid()))?;
    std::fs::set_permissions(folder, there.permissions())?;
    let all = |path: &Path| Ok((std::fs::metadata(path)?.mode(), fs::listxattr_query(path).unwrap_or(0)));
    let same: io::Result<bool> = all(folder).and_then(|taken| Ok(taken == all(of)?));
    if same? { Ok(()) } else { Err(io::ErrorKind::PermissionDenied.into()) }
}

/// Lets two folders change places in one step.
#[cfg(any(target_os = "linux", target_vendor = "apple"))]
pub(super) fn swap(one: &Path, other: &Path) -> io::Result<()> {
    Ok(fs::renameat_with(CWD, one, CWD, other, fs::RenameFlags::EXCHANGE)?)
}

/// Elsewhere no two folders change places in one step, and nothing of this is asked.
#[cfg(not(any(target_os = "linux", target_vendor = "apple")))]
mod elsewhere {
    use super::{Metadata, Path, io};

    pub(in super::super) fn id(_file: &Metadata) -> (u64, u64) {
        (0, 0)
    }

    pub(in super::super) fn is_writable(_folder: &Path) -> bool {
        true
    }

    pub(in super::super) fn take_rights(_of: &Path, _folder: &Path) -> io::Result<()> {
        Ok(())
    }

    pub(in super::super) fn swap(_one: &Path, _other: &Path) -> io::Result<()> {
        Err(io::ErrorKind::Unsupported.into())
    }
}
#[cfg(not(any(target_os = "linux", target_vendor = "apple")))]
pub(super) use elsewhere::{id, is_writable, swap, take_rights};
