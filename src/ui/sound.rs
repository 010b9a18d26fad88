//! Sounds: two short tones made here, played by whichever of the system's players is there.

use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::sync::Arc;
use std::sync::mpsc::{RecvTimeoutError, Sender, channel};
use std::time::Duration;

use crate::logbook::{Machine, disk};

/// Something the person should hear.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Sound {
    /// A second of the count-in.
    Tick,
    /// The hold begins, or rest is over.
    Go,
}

/// Plays a sound, and comes back at once.
pub type Play = Arc<dyn Fn(Sound) + Send + Sync>;

/// Players that take a file; the first that is found is used.
const PLAYERS: [&str; 3] = ["pw-play", "paplay", "aplay"];

/// Samples a second.
const RATE: u32 = 22_050;

impl Sound {
    /// Hertz, and how often it beeps.
    fn tone(self) -> (f64, u32) {
        match self {
            Self::Tick => (660.0, 1),
            Self::Go => (880.0, 2),
        }
    }

    fn file(self) -> &'static str {
        match self {
            Self::Tick => "tick.wav",
            Self::Go => "go.wav",
        }
    }

    /// The tone as a WAV file (RIFF, PCM 16 bit, one channel).
    pub fn wav(self) -> Vec<u8> {
        let (hertz, beeps) = self.tone();
        let beep = RATE / 8;
        let samples: Vec<i16> = (0..beep * (2 * beeps - 1))
            .map(|nth| {
                if (nth / beep) % 2 == 1 {
                    return 0;
                }
                let at = f64::from(nth % beep) / f64::from(RATE);
                let of = f64::from(nth % beep) / f64::from(beep);
                // It swells and fades, so that no edge clicks.
                let swell = (of * std::f64::consts::PI).sin();
                let wave = (at * hertz * std::f64::consts::TAU).sin() * swell;
                #[allow(clippy::cast_possible_truncation, reason = "between −12,000 and 12,000")]
                let sample = (wave * 12_000.0) as i16;
                sample
            })
            .collect();
        let bytes = u32::try_from(samples.len() * 2).unwrap_or(0);
        let mut wav = Vec::new();
        wav.extend_from_slice(b"RIFF");
        wav.extend_from_slice(&(36 + bytes).to_le_bytes());
        wav.extend_from_slice(b"WAVEfmt ");
        for (number, width) in [(16, 4), (1, 2), (1, 2), (RATE, 4), (RATE * 2, 4), (2, 2), (16, 2)] {
            wav.extend(number.to_le_bytes().into_iter().take(width));
        }
        wav.extend_from_slice(b"data");
        wav.extend_from_slice(&bytes.to_le_bytes());
        wav.extend(samples.into_iter().flat_map(i16::to_le_bytes));
        wav
    }
}

/// How sounds are played on this machine; none where no player is found.
pub fn player(machine: &Machine) -> Option<Play> {
    let program = std::env::var_os("PATH")
        .iter()
        .flat_map(std::env::split_paths)
        .flat_map(|folder| PLAYERS.map(|name| folder.join(name)))
        .collect::<Vec<_>>();
    let program = PLAYERS
        .iter()
        .find_map(|name| program.iter().find(|path| path.ends_with(name) && path.is_file()))?
        .clone();
    let machine = machine.clone();
    Some(Arc::new(move |sound| {
        let (program, machine) = (program.clone(), machine.clone());
        // A player takes as long as its tone; its end is waited for where nobody else waits.
        std::thread::spawn(move || {
            if let Some(file) = laid(&machine, sound) {
                play(&program, &file);
            }
        });
    }))
}

/// The tone's file in the cache, made if it isn't there.
fn laid(machine: &Machine, sound: Sound) -> Option<PathBuf> {
    let folder = &machine.places().cache;
    let (file, wav) = (folder.join(sound.file()), sound.wav());
    if machine.disk().read(&file).is_ok_and(|bytes| bytes == wav) {
        return Some(file);
    }
    let temporary = folder.join(format!(".{}.tmp", sound.file()));
    disk::make_folders(machine.disk(), folder).ok()?;
    disk::replace(machine.disk(), &file, &temporary, &wav).ok()?;
    Some(file)
}

fn play(program: &Path, file: &Path) {
    let silent = || Stdio::null();
    // A sound that can't be played has its visible mark all the same.
    let _ = Command::new(program)
        .arg(file)
        .stdin(silent())
        .stdout(silent())
        .stderr(silent())
        .status();
}

/// Something that happens later, on a thread of its own; dropping it calls it off.
pub struct Alarm {
    _off: Sender<()>,
}

impl Alarm {
    /// Does `what` after `wait`.
    pub fn after(wait: Duration, what: impl FnOnce() + Send + 'static) -> Self {
        let (off, called_off) = channel();
        std::thread::spawn(move || {
            if called_off.recv_timeout(wait) == Err(RecvTimeoutError::Timeout) {
                what();
            }
        });
        Self { _off: off }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_tone_is_a_wav_file_of_16_bit_samples() {
        // The RIFF/WAVE layout: Microsoft, "Multimedia Programming Interface and Data Specifications 1.0", 1991.
        let wav = Sound::Go.wav();
        let number = |at: usize| u32::from_le_bytes([wav[at], wav[at + 1], wav[at + 2], wav[at + 3]]);
        assert_eq!((&wav[..4], &wav[8..16]), (&b"RIFF"[..], &b"WAVEfmt "[..]));
        assert_eq!(number(4) as usize, wav.len() - 8);
        assert_eq!((number(16), number(24), number(28)), (16, RATE, RATE * 2));
        assert_eq!(number(40) as usize, wav.len() - 44);
        assert_ne!(Sound::Tick.wav(), wav);
    }

    #[test]
    fn an_alarm_rings_unless_it_is_called_off() {
        let (rang, rings) = channel();
        let again = rang.clone();
        let called_off = Alarm::after(Duration::from_secs(60), move || again.send("late").unwrap());
        let kept = Alarm::after(Duration::from_millis(1), move || rang.send("on time").unwrap());
        drop(called_off);
        assert_eq!(rings.recv(), Ok("on time"));
        drop(kept);
        assert!(rings.recv().is_err(), "the one that was called off never rings");
    }
}
