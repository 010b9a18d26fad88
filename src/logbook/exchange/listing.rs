//! Problems of a file, at most so many of them in full.

use std::fmt;

use crate::problem::Problem;

/// Problems listed in full; the rest is counted. Nobody reads further, and memory stays bounded. Common practice, no source.
pub const MOST_LISTED: usize = 100;

/// Problems in the order of the file: the first [`MOST_LISTED`], and how many more there are.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Listing {
    /// The first ones.
    pub listed: Vec<Problem>,
    /// How many follow.
    pub more: usize,
}

impl Listing {
    /// Lists or counts one more.
    pub fn push(&mut self, problem: Problem) {
        if self.listed.len() < MOST_LISTED {
            self.listed.push(problem);
        } else {
            self.more += 1;
        }
    }

    /// Lists or counts all of them.
    pub fn extend(&mut self, problems: impl IntoIterator<Item = Problem>) {
        problems.into_iter().for_each(|problem| self.push(problem));
    }

    /// Whether there are none.
    pub fn is_empty(&self) -> bool {
        self.listed.is_empty()
    }
}

impl From<Problem> for Listing {
    fn from(problem: Problem) -> Self {
        Self {
            listed: vec![problem],
            more: 0,
        }
    }
}

impl fmt::Display for Listing {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for (place, problem) in self.listed.iter().enumerate() {
            let gap = if place == 0 { "" } else { "\n" };
            write!(f, "{gap}{problem}")?;
        }
        if self.more > 0 {
            write!(f, "\nand {} more", self.more)?;
        }
        Ok(())
    }
}
