//! Demand of a straight-arm rung: its shoulder moment over the full shape's.

use super::super::band::{Band, Status};
use super::super::lever::{Lever, lean_for, planche_lean, shape_number};
use super::super::posture::Posture;
use super::super::quantity::{Angle, Moment};
use super::super::segments::Segments;
use super::Computed;
use super::need::Asked;
use super::words::How;
use crate::catalogue::{BodyShare, Help, Shape};
use crate::units::Mass;

/// The movement whose feet stay on the floor.
const PLANCHE_LEAN: &str = "planche-lean";
/// Lean of a planche lean whose file says nothing, with its band: an assumption from common practice.
const USUAL_LEAN: Band = Band::new(20.0, 15.0, 30.0);

/// What a rung's hold does to the joints.
pub(super) struct Held {
    pub moment: Option<Band>,
    pub elbow: Option<Moment>,
    pub lean: Option<Angle>,
}

/// A posture and the lightest and heaviest that pass for it.
#[derive(Debug, Clone, Copy)]
struct Form {
    posture: Posture,
    limits: [Posture; 2],
    status: Status,
}

fn form(help: &Help) -> Option<Form> {
    let shape = match help {
        Help::Shape(shape) => *shape,
        Help::Plain | Help::Added => Shape::Level,
        Help::Variation(words) if words.trim().to_lowercase().replace([' ', '_'], "-") == "half-lay" => {
            let knees = |degrees| {
                let mut posture = Posture::HALF_LAY;
                for leg in &mut posture.legs {
                    leg.knee = Angle::from_degrees(degrees);
                }
                posture
            };
            return Some(Form {
                posture: Posture::HALF_LAY,
                limits: [knees(120.0), knees(60.0)],
                status: Status::Derived,
            });
        }
        _ => return None,
    };
    let status = match shape {
        // Roundness and the tucked leg's angles are modelling choices.
        Shape::Tuck | Shape::OneLeg => Status::Assumption,
        _ => Status::Derived,
    };
    Some(Form {
        posture: Posture::of(shape),
        limits: Posture::limits(shape),
        status,
    })
}

/// Part of the full shape's moment in one table.
fn part(segments: &Segments, posture: &Posture) -> f64 {
    shape_number(segments, posture) / shape_number(segments, &Posture::FULL)
}

/// The part of the full shape's moment with the honest band: of the shape that is held, of both sexes' tables where the sex
/// isn't known, and the second table's opinion.
fn part_band(asked: &Asked, form: &Form) -> Band {
    let centre = Band::exactly(part(asked.body.segments(), &form.posture));
    let wide = asked.body.tables().iter().fold(centre, |band, table| {
        let [light, heavy] = form.limits.map(|limit| part(table, &limit));
        band.and(Band::new(part(table, &form.posture), light, heavy))
    });
    wide.and(Band::exactly(part(&Segments::WINTER, &form.posture)))
}

fn leaning_band(asked: &Asked) -> Band {
    let at = |segments: &Segments| {
        let part = |degrees| planche_lean(segments, Angle::from_degrees(degrees));
        Band::new(
            part(USUAL_LEAN.centre()),
            part(USUAL_LEAN.low()),
            part(USUAL_LEAN.high()),
        )
    };
    let tables = asked.body.tables().iter().map(at);
    tables.fold(at(asked.body.segments()), Band::and)
}

/// The lean that a stated demand stands for, else the usual one.
fn stated_lean(asked: &Asked) -> Angle {
    let part = asked.rung.demand.as_ref().map(|given| given.demand.value());
    part.filter(|part| (0.0..=1.0).contains(part))
        .map_or(Angle::from_degrees(USUAL_LEAN.centre()), |part| {
            lean_for(asked.body.segments(), part)
        })
}

fn is_planche_lean(asked: &Asked) -> bool {
    asked.rung.movement == PLANCHE_LEAN
}

/// The demand by the lever; none for help that has no shape.
pub(super) fn demand(asked: &Asked) -> Option<Computed> {
    if asked
        .movement
        .is_none_or(|movement| movement.share != BodyShare::Lever)
    {
        return None;
    }
    if is_planche_lean(asked) {
        return Some(Computed {
            demand: leaning_band(asked),
            status: Status::Assumption,
            how: How::PlancheLean {
                degrees: stated_lean(asked).degrees(),
                usual: [USUAL_LEAN.low(), USUAL_LEAN.high()],
            },
        });
    }
    let form = form(&asked.rung.help)?;
    let numbers = |segments: &Segments| {
        (
            shape_number(segments, &form.posture),
            shape_number(segments, &Posture::FULL),
        )
    };
    let (shape, full) = numbers(asked.body.segments());
    Some(Computed {
        demand: part_band(asked, &form),
        status: form.status,
        how: How::Lever {
            shape,
            full,
            scale: asked.body.mass().map(|mass| weight_times_height(asked, mass)),
            second_opinion: part(&Segments::WINTER, &form.posture),
            tucked_back_lever: asked.rung.movement == "back-lever"
                && matches!(asked.rung.help, Help::Shape(Shape::Tuck | Shape::AdvancedTuck)),
        },
    })
}

fn weight_times_height(asked: &Asked, mass: Mass) -> f64 {
    mass.kg() * super::super::GRAVITY * asked.body.height().metres()
}

/// Moment, lean and elbow of the rung's shape; kilograms and newton metres only for a body whose mass is known.
pub(super) fn held(asked: &Asked) -> Held {
    let segments = asked.body.segments();
    let full = shape_number(segments, &Posture::FULL);
    let scale = asked.body.mass().map(|mass| weight_times_height(asked, mass));
    if is_planche_lean(asked) {
        let part = asked.rung.demand.as_ref().map(|given| given.demand.value());
        let lean = part
            .filter(|part| (0.0..=1.0).contains(part))
            .map_or(Angle::from_degrees(USUAL_LEAN.centre()), |part| {
                lean_for(segments, part)
            });
        let part = part.unwrap_or_else(|| planche_lean(segments, lean));
        return Held {
            moment: scale.map(|scale| asked.body.height_band().times(part * full * scale)),
            elbow: None,
            lean: Some(lean),
        };
    }
    let Some(form) = form(&asked.rung.help) else {
        return Held {
            moment: None,
            elbow: None,
            lean: None,
        };
    };
    let mass = asked.body.mass().unwrap_or(Mass::from_kg(1.0));
    let lever = Lever::new(segments, form.posture, asked.body.height(), mass);
    let second = shape_number(&Segments::WINTER, &form.posture);
    let moment = |scale: f64| {
        let shapes = asked.body.tables().iter().fold(
            Band::exactly(shape_number(segments, &form.posture)),
            |band, table| {
                let [light, heavy] = form.limits.map(|limit| shape_number(table, &limit));
                band.and(Band::new(shape_number(table, &form.posture), light, heavy))
            },
        );
        let shapes = shapes.and(Band::exactly(second));
        Band::product(&[shapes, asked.body.height_band()]).times(scale)
    };
    Held {
        moment: scale.map(moment),
        elbow: lever.elbow_moment().filter(|_| scale.is_some()),
        lean: lever.lean(),
    }
}
