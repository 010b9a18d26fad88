//! `retract`: a record no longer counts; it stays in its journal.

use crate::logbook::Fact;

use super::args_record::RetractArgs;
use super::mend::{self, Mending};
use super::{Answer, Failed};

/// Runs `retract`.
pub fn run(args: &RetractArgs) -> Result<Answer, Failed> {
    let target = mend::id(&args.id)?;
    let why = args.why.as_deref().map(str::trim).filter(|why| !why.is_empty());
    let why = why.map(str::to_owned);
    Mending::open(args.logbook.as_ref(), target)?.save(Fact::Retract { target, why })
}
