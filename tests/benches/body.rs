//! How long the demands of all shipped ladders take for one body; the bound to keep is 0.2 ms.

use rungwright::body::{Body, Facts, demands};
use rungwright::catalogue::Catalogue;
use rungwright::logbook::record::Sex;
use rungwright::units::{Bodyweight, Height, Mass};

fn main() {
    divan::main();
}

fn body(sex: Option<Sex>) -> Body {
    let facts = Facts {
        height: Height::from_cm(175.0).ok(),
        mass: Some(Bodyweight::new(Mass::from_kg(75.0))),
        sex,
        years: None,
    };
    Body::new(facts).unwrap_or(Body::unknown_body())
}

/// Numbers of every rung of every shipped ladder.
#[divan::bench(args = [Some(Sex::Male), None])]
fn demands_of_all_shipped_ladders(bencher: divan::Bencher, sex: Option<Sex>) {
    let catalogue = Catalogue::shipped();
    let body = body(sex);
    bencher.bench_local(|| {
        let of_one = |ladder| demands(ladder, catalogue, &body).len();
        catalogue.ladders().map(of_one).sum::<usize>()
    });
}

/// The same with every sentence written out.
#[divan::bench]
fn demands_of_all_shipped_ladders_in_words(bencher: divan::Bencher) {
    let catalogue = Catalogue::shipped();
    let body = body(Some(Sex::Female));
    bencher.bench_local(|| {
        let of_one = |ladder| -> usize {
            let demands = demands(ladder, catalogue, &body);
            demands.iter().map(|demand| demand.text().len()).sum()
        };
        catalogue.ladders().map(of_one).sum::<usize>()
    });
}
