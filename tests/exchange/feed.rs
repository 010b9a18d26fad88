//! Rows that come one at a time.

use rungwright::catalogue::Catalogue;
use rungwright::logbook::exchange::{Fed, Feed, Import, Options};

use crate::kit::{FILE, good};

fn feed(lines: &[&str]) -> Vec<Fed> {
    let options = Options::default();
    let import = Import {
        file: FILE,
        options: &options,
        catalogue: Catalogue::shipped(),
        device: "test",
        known: &|name| name.as_str() == "Ben",
    };
    let mut feed = Feed::new(&import);
    let mut fed: Vec<Fed> = lines.iter().map(|line| feed.line(line.as_bytes())).collect();
    fed.push(feed.end());
    fed
}

#[test]
fn each_line_gives_its_row_at_once_and_a_quoted_line_break_waits_for_its_end() {
    let lines = [
        "\u{feff}athlete,date,movement,reps,note\r\n",
        "Ana,2026-03-18,dip,5,\r\n",
        "\r\n",
        "Ben,2026-03-18,dip,5,\"slow\r\n",
        "and, \"\"careful\"\"\"\r\n",
        "Ana,2026-03-18,dip,5,last",
    ];
    let fed = feed(&lines);
    assert!(fed.iter().all(|fed| fed.wrong.is_none()));
    let seen: Vec<Vec<(usize, usize)>> = fed
        .iter()
        .map(|fed| fed.rows.iter().map(|row| (row.line, row.records.len())).collect())
        .collect();
    // Ana's first row brings her name; Ben has one.
    assert_eq!(
        seen,
        [
            vec![],
            vec![(2, 2)],
            vec![],
            vec![],
            vec![(4, 1)],
            vec![(6, 1)],
            vec![]
        ]
    );
    let ids = |rows: &[rungwright::logbook::exchange::Row]| -> Vec<_> {
        rows.iter().map(|row| row.records[0].id).collect()
    };
    let rows: Vec<_> = fed.into_iter().flat_map(|fed| fed.rows).collect();
    assert_eq!(ids(&rows), ids(&good(&lines.concat()).rows));
}

#[test]
fn the_rows_before_a_bad_one_are_good_and_the_bad_one_has_its_line() {
    let fed = feed(&[
        "athlete,date,movement,reps\n",
        "Ana,2026-03-18,dip,5\n",
        "\n",
        "Ana,2026-03-18,dip,x\n",
    ]);
    assert_eq!(fed[1].rows.len(), 1);
    let wrong = fed[3].wrong.as_ref().expect("a bad row");
    assert_eq!(
        (wrong.listed[0].place.line, wrong.listed[0].what.as_str()),
        (4, "reps \"x\" is no number")
    );
    let stray = feed(&["athlete,date,note\n", "Ana,2026-03-18,5\" box\n"]);
    assert!(stray[1].wrong.is_some(), "a stray quote doesn't wait for another");
    let open = feed(&["athlete,date,note\n", "Ana,2026-03-18,\"box\n"]);
    assert!(open[1].wrong.is_none() && open[2].wrong.is_some());
    assert!(feed(&["athlete,reps\n"])[0].wrong.is_some());
}
