//! `restore`: a retracted record counts again.

use crate::logbook::Fact;

use super::args_record::RestoreArgs;
use super::mend::{self, Mending};
use super::{Answer, Failed};

/// Runs `restore`.
pub fn run(args: &RestoreArgs) -> Result<Answer, Failed> {
    let target = mend::id(&args.id)?;
    Mending::open(args.logbook.as_ref(), target)?.save(Fact::Restore { target })
}
