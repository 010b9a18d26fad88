//! Files that are refused as a whole, and what options make of them.

use rungwright::logbook::exchange::{Dates, Options, headers};

use crate::kit::{FILE, good_with, read_bytes, read_with, records};

fn refused(csv: &[u8], options: &Options) -> Vec<String> {
    let wrong = read_bytes(csv, options, &|_| false).expect_err("refused");
    wrong
        .listed
        .iter()
        .map(|problem| {
            let place = &problem.place;
            assert_eq!(place.file, FILE);
            format!("{}:{} {}", place.line, place.column, problem.what)
        })
        .collect()
}

fn mapped(maps: &[&str]) -> Options {
    Options {
        map: maps.iter().map(|map| map.parse().unwrap()).collect(),
        ..Options::default()
    }
}

#[test]
fn a_file_without_a_usable_header_is_refused() {
    let plain = Options::default();
    for (csv, what) in [
        ("", "1:1 the file has no header"),
        ("\n \n,,\n", "1:1 the file has no header"),
        (
            "Ana,2026-03-18,80\n",
            "1:1 no header: no cell of the first line is the name of a column",
        ),
        ("athlete,reps\n", "1:1 no column date"),
        ("\n\ndate,reps\n", "3:1 no column athlete"),
        ("athlete,date,weight\n", "1:14 unknown column \"weight\""),
        ("athlete,date,,reps\n", "1:14 a column without a name"),
        (
            "athlete,date,Added_KG,added kg\n",
            "1:23 \"added kg\" is a second column added_kg",
        ),
        ("athlete,da\0te\n", "1:9 a NUL byte"),
        ("\"athlete,date\n", "1:1 a quote that is never closed"),
    ] {
        assert_eq!(refused(csv.as_bytes(), &plain), [what], "{csv:?}");
    }
    assert_eq!(refused(b"\xff\xfea\0", &plain), ["1:1 the file is UTF-16"]);
    assert_eq!(
        refused(b"athlete,date,not\xe9\n", &plain),
        ["1:14 bytes that are not UTF-8"]
    );
}

#[test]
fn files_over_a_limit_are_refused_with_their_line() {
    let plain = Options::default();
    let note = |length: usize| format!("athlete,date,note\nAna,2026-03-18,{}\n", "x".repeat(length));
    assert!(read_with(&note(64 << 10), &plain).is_ok());
    assert_eq!(
        refused(note((64 << 10) + 1).as_bytes(), &plain),
        ["2:16 a cell of more than 65536 bytes"]
    );
    let wide = format!("athlete,date{}\n", ",".repeat(255));
    assert_eq!(refused(wide.as_bytes(), &plain), ["1:268 more than 256 columns"]);
    let widest = format!("athlete,date{}\nAna,2026-03-18{0}\n", ",".repeat(254));
    assert!(read_with(&widest, &mapped(&["="])).is_ok());
    let large = vec![b'\n'; (200 << 20) + 1];
    assert_eq!(refused(&large, &plain), ["1:1 the file has more than 200 MiB"]);
}

#[test]
fn a_spreadsheet_that_calls_its_columns_otherwise_is_mapped_and_the_rest_dropped() {
    let csv = "Wer,Tag,Übung,Gürtel,Wdh,Laune\nAna,2026-03-18,dip,20,5,gut\n";
    let maps = [
        "wer=athlete",
        "TAG=date",
        "Übung=movement",
        "Gürtel=added_kg",
        "Wdh=reps",
        "Laune=",
    ];
    let sheet = good_with(csv, &mapped(&maps));
    let plain = good_with(
        "athlete,date,movement,added_kg,reps\nAna,2026-03-18,dip,20,5\n",
        &Options::default(),
    );
    assert_eq!(sheet, plain);
    assert_eq!(
        refused(csv.as_bytes(), &mapped(&maps[..5])),
        ["1:26 unknown column \"Laune\""]
    );
    assert_eq!(
        refused(b"athlete,date\n", &mapped(&["Kilos=added_kg"])),
        ["1:1 no column \"Kilos\", which --map names"]
    );
}

#[test]
fn an_unknown_column_is_mended_with_the_one_that_was_meant() {
    let wrong = read_with("athlete,date,rep\n", &Options::default()).unwrap_err();
    assert_eq!(
        wrong.to_string(),
        "sets.csv:1:14: unknown column \"rep\"\n  mend: did you mean reps? say what it is with --map \"rep=OURS\", \
         or drop it with --map \"rep=\""
    );
}

#[test]
fn one_lifters_own_sheet_needs_no_column_athlete() {
    let options = Options {
        athlete: Some("  Zoe\u{308} ".into()),
        ..Options::default()
    };
    let sheet = good_with("date,bodyweight_kg\n2026-03-18,61\n", &options);
    // Composed, as Unicode's normalisation form C has it.
    assert_eq!(sheet.rows[0].athlete.as_str(), "Zo\u{eb}");
    let both = read_with("athlete,date\nAna,2026-03-18\n", &options).unwrap();
    assert_eq!(both.rows[0].athlete.as_str(), "Ana");
    assert_eq!(both.notes.listed.len(), 1);
    let nameless = Options {
        athlete: Some(" ".into()),
        ..Options::default()
    };
    assert_eq!(
        refused(b"date\n2026-03-18\n", &nameless),
        ["1:1 a name needs at least one character"]
    );
}

#[test]
fn day_first_dates_hold_for_every_column_of_dates() {
    let options = Options {
        dates: Dates::Dmy,
        ..Options::default()
    };
    let day_first = good_with(
        "athlete,date,born,goal,goal_by\nAna,18.3.2026,2/5/1994,weighted-dip/plus-25,31-12-2026\n",
        &options,
    );
    let year_first = good_with(
        "athlete,date,born,goal,goal_by\nAna,2026-03-18,1994-05-02,weighted-dip/plus-25,2026-12-31\n",
        &Options::default(),
    );
    assert_eq!(day_first, year_first);
    let mixed = read_with("athlete,date\nAna,2026-03-18\n", &options).unwrap();
    assert_eq!(
        mixed.problems.listed[0].mend,
        "write it as 18.03.2026, or say in which order the file has it with --dates ymd, dmy or mdy"
    );
}

#[test]
fn an_unknown_ladder_to_join_is_refused_before_any_row() {
    let options = Options {
        ladders: vec!["weighted dipp".into()],
        ..Options::default()
    };
    let wrong = read_with("athlete,date\nAna,2026-03-18\n", &options).unwrap_err();
    assert_eq!(
        wrong.to_string(),
        "sets.csv:1:1: unknown ladder \"weighted dipp\" of --ladder\n  mend: did you mean weighted-dip?"
    );
}

#[test]
fn blank_lines_and_rows_of_empty_cells_are_skipped_and_lines_still_counted() {
    let csv =
        "\u{feff}\r\nathlete,date,bodyweight_kg\r\n\r\n,,\r\n   \r\nAna,2026-03-18,80\r\n\"\",\" \",\r\n";
    let sheet = good_with(csv, &Options::default());
    assert_eq!((sheet.rows.len(), sheet.rows[0].line), (1, 6));
    assert_eq!(records(&sheet).len(), 1);
}

#[test]
fn the_headers_can_be_asked_before_a_file_is_read() {
    let semicolon = ";".parse().unwrap();
    let csv = "\u{feff}\n Datum ;\"Übung; wie\"\n1;2\n".as_bytes();
    assert_eq!(headers(csv, semicolon), ["Datum", "Übung; wie"]);
    assert!(headers(b"\n\n", semicolon).is_empty());
}
