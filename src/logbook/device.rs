//! This machine's name in the journals that it writes: random, made once, never the host's name.

use std::io;

use crate::problem::quoted;

use super::disk;
use super::machine::Machine;
use super::names::base32_letters;
use super::record::Device;
use super::trouble::Trouble;

/// The variable that names the device instead.
pub const VARIABLE: &str = "RUNGWRIGHT_DEVICE";

/// The device called `name`.
///
/// # Errors
/// When it isn't 1 to 32 of `a-z`, `0-9` and `-`.
pub fn named(name: &str) -> Result<Device, Trouble> {
    let fits = (1..=32).contains(&name.len())
        && name
            .bytes()
            .all(|byte| matches!(byte, b'a'..=b'z' | b'0'..=b'9' | b'-'));
    if fits {
        Ok(name.to_owned())
    } else {
        Err(Trouble::BadDevice(quoted(name)))
    }
}

/// This machine's device: the one kept in the state folder, else a new one from `random` bits, kept from now on.
///
/// # Errors
/// When the state folder can't be read or written.
pub fn of_machine(machine: &Machine, random: u64) -> Result<Device, Trouble> {
    let folder = &machine.places().state;
    let path = folder.join("device");
    if let Some(device) = kept(machine)? {
        return Ok(device);
    }
    disk::make_folders(machine.disk(), folder).map_err(Trouble::io(folder, "cannot be made"))?;
    let _held = machine.lock(&path, std::time::Duration::from_secs(10))?;
    if let Some(device) = kept(machine)? {
        return Ok(device);
    }
    let device = base32_letters(random);
    let temporary = folder.join(".device.tmp");
    disk::replace(machine.disk(), &path, &temporary, device.as_bytes())
        .map_err(Trouble::io(&path, "cannot be written"))?;
    Ok(device)
}

fn kept(machine: &Machine) -> Result<Option<Device>, Trouble> {
    let path = machine.places().state.join("device");
    match machine.disk().read(&path) {
        Ok(bytes) => Ok(String::from_utf8(bytes)
            .ok()
            .and_then(|name| named(name.trim_end()).ok())),
        Err(error) if error.kind() == io::ErrorKind::NotFound => Ok(None),
        Err(error) => Err(Trouble::io(&path, "cannot be read")(error)),
    }
}
