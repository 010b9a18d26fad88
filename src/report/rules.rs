//! What each rule asks, why, and on whose word: a line for a person who asks an advice's reason.

/// What the rule with this id asks, and its source; for a rung's own caution, where it comes from.
pub fn doc(id: &str) -> &'static str {
    let line = DOCS.iter().find(|(rule, _)| *rule == id);
    line.map_or(
        "A caution of this rung, as its ladder file says.",
        |(_, words)| words,
    )
}

/// Rules in the order in which they are asked, then caps, then cautions.
const DOCS: &[(&str, &str)] = &[
    (
        "pain-stop",
        "Was 6 or more of 10 reported at a joint this rung loads, and not less since? Sharp pain is no training load (pain monitoring, Thomeé 1997, from memory).",
    ),
    (
        "weigh-in-stale",
        "Is the last weigh-in 15 days old or older? The belt is the target less your bodyweight, and an old one makes a wrong belt. Common practice, no source.",
    ),
    (
        "placed",
        "Was this hand put on the rung, with nothing logged there since? A placement is a person’s word.",
    ),
    (
        "no-record",
        "Nothing is known of this rail: begin at the highest rung whose entry is logged and whose standard is not. Common practice, no source.",
    ),
    (
        "entry-untested",
        "The rung above asks for something you never tried; one set tells. It never decides.",
    ),
    (
        "layoff-short",
        "Some weeks without a day on this rung: strength falls with time off (Bosquet et al. 2013), so a little lighter.",
    ),
    (
        "layoff-long",
        "Long away from this rung: lighter still, or the rung below where nothing is hung (Bosquet et al. 2013).",
    ),
    (
        "layoff-step",
        "Very long away: a rung lower, for strength falls with time off (Bosquet et al. 2013). It comes back.",
    ),
    (
        "after-pain",
        "6 or more was reported in the last four weeks, with no day on the rung since: the first day back is a trial. Common practice, no source.",
    ),
    (
        "deload",
        "Today lies in a deload: half the sets at the same load keep strength, a week fully off cost some (Coleman et al. 2024).",
    ),
    (
        "standard-met",
        "Was the standard met on the asked days, and does the next rung let you in? Once can be a good day. Common practice, no source.",
    ),
    (
        "entry-missing",
        "The standard is met, but the next rung asks for something that isn’t logged yet. Log it, and it lets you in.",
    ),
    (
        "missed-twice",
        "Two judged days in a row with a miss: lighter before lower. Common practice, no source.",
    ),
    (
        "missed-again",
        "Missed twice again in this stay: a load that fails again and again is a rung too high. Common practice, no source.",
    ),
    (
        "light-only",
        "Only light days here so far, and a light day shows nothing. Common practice, no source.",
    ),
    (
        "missed-once",
        "A miss last time: the same once more, before anything is added. Common practice, no source.",
    ),
    (
        "form-miss",
        "The movement’s standard wasn’t kept last time: the same once more. Common practice, no source.",
    ),
    (
        "sets-short",
        "Fewer sets than asked last time: the same once more. Common practice, no source.",
    ),
    (
        "reserve-short",
        "Less in reserve than asked last time: the same once more. Common practice, no source.",
    ),
    (
        "one-more-day",
        "The standard was met once; another day makes it a fact. Common practice, no source.",
    ),
    (
        "top-of-range",
        "All sets at the top of the range with the asked reserve: the smallest step your plates make, 2 to 10 % of system load (ACSM position stand 2009).",
    ),
    (
        "coarse-step",
        "Your next plate is a bigger step than 10 %: it is taken when the reps done carry it (Epley’s formula). Small plates help.",
    ),
    (
        "no-step-in-band",
        "No step of 2 to 10 % can be hung from your plates: reps are added first (ACSM position stand 2009 for the band).",
    ),
    (
        "last-rung",
        "The top of the range on the last rung: keep it. Common practice, no source.",
    ),
    (
        "reserve-unlogged",
        "The top was reached without a logged reserve, so nobody knows what was left: once more, or log it. Common practice, no source.",
    ),
    (
        "test-due",
        "Nothing hard for six weeks: a best set now and then keeps the loads honest. Common practice, no source.",
    ),
    (
        "stalled",
        "Six judged days brought nothing at this load: a lighter day, then up again. Common practice, no source.",
    ),
    (
        "in-range",
        "Within the range: the next thing is a rep or a few seconds. Common practice, no source.",
    ),
    (
        "pain-cap",
        "3 to 5 of 10 at a joint of this rung: fine for work, not for more of it (pain monitoring, Thomeé 1997, from memory).",
    ),
    (
        "minor-no-max",
        "Under 18, no maximal attempts are asked, and rungs that lead past one are left out. Common practice, no source.",
    ),
    (
        "tendon-time",
        "This rung is too new for the tendons it loads; they adapt more slowly than muscle (Kjær et al. 2009).",
    ),
    (
        "side-wait",
        "This hand is ahead and waits, so that the gap doesn’t grow. Common practice, no source.",
    ),
    (
        "side-gap",
        "One side does more than the other: the weaker one sets the sets. Common practice, no source.",
    ),
    (
        "spacing",
        "Days in a row give a joint no rest; the rung says how many days a week it takes. Common practice, no source.",
    ),
    (
        "contradictory-log",
        "A missed set with something in reserve: one of the two is a slip. Amend it, so that advice stands on what happened.",
    ),
    (
        "check-entry",
        "A set far from what your others show: perhaps a slip of the finger. It counts in no rule until you confirm it.",
    ),
    (
        "weigh-in-odd",
        "A weigh-in far off the others around it is left out until another confirms it.",
    ),
    (
        "entry-not-met",
        "You stand on a rung whose entry isn’t logged. Nothing is taken away; it is good to know.",
    ),
    (
        "test-safety",
        "A maximal attempt: warm up, have a spotter or a safe way down, check bar, belt and chain.",
    ),
    (
        "pain-professional",
        "Strong pain, or pain that stays, is for a licensed professional, not for a program.",
    ),
    (
        "minor",
        "Under 18: with an adult who knows the lifts, and by your club’s or school’s rules.",
    ),
    (
        "underweight",
        "Below the healthy range of body mass index (World Health Organization, from memory) nothing here asks you to weigh less.",
    ),
    (
        "cut-refused",
        "No cut is advised below the healthy range (World Health Organization, from memory), nor to anyone under 18.",
    ),
    (
        "cut-fast",
        "More than 0.7 % a week costs strength (Garthe et al. 2011).",
    ),
    (
        "cut-long",
        "After about six months of losing weight, a break is due. Common practice, no source.",
    ),
    (
        "long-shot",
        "Is the step likelier to fail than to hold, by what your sets show? An estimate; it changes no verdict.",
    ),
    (
        "held-back",
        "On one scale, does one kind of evidence lie clearly below the others? Train what holds you back; an estimate that changes no verdict.",
    ),
];

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::BTreeSet;

    #[test]
    fn every_rule_says_what_it_asks_once_and_in_sentences() {
        let mut seen = BTreeSet::new();
        for (rule, words) in DOCS {
            assert!(seen.insert(rule), "{rule} twice");
            assert!(words.ends_with('.'), "{rule}");
        }
        // The ids as the rules themselves write them.
        let source = include_str!("../coaching/finding.rs");
        for line in source
            .lines()
            .filter(|line| line.contains("{ .. } => \"") || line.contains(" => \""))
        {
            let Some(id) = line.split('"').nth(1) else {
                continue;
            };
            assert!(seen.contains(&id), "{id} has no line");
        }
        assert!(seen.contains(&"in-range") && doc("in-range").contains("rep"));
    }
}
