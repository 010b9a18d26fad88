//! Sheets that put a hand on a rung, or set a rail aside.

use egui::Ui;

use crate::ui::action::Actions;
use crate::ui::book::Deed;
use crate::ui::screens::sheet::SheetFrame;
use crate::ui::theme::Theme;
use crate::ui::views::LadderView;
use crate::ui::widgets::Button;
use crate::units::Rail;

use super::state::{LaddersState, Over, id_of, title_of};

/// Shows the sheet while it is open.
pub(super) fn place_ui(ui: &mut Ui, view: &LadderView, state: &mut LaddersState, actions: &mut Actions) {
    let rails: &[(Rail, &str)] = if view.sided {
        &[
            (Rail::Left, "Left hand"),
            (Rail::Right, "Right hand"),
            (Rail::Both, "Both hands"),
        ]
    } else {
        &[(Rail::Both, "Both hands")]
    };
    let closed = match (state.over, state.chosen) {
        (Some(Over::Place), Some(spot)) => {
            let title = format!("Place a hand on {}", title_of(view, spot).unwrap_or_default());
            let words = "The next step follows from this rung from today on. Nothing logged is changed.";
            choose(ui, &title, words, rails, |rail| {
                if let Some(rung) = id_of(view, spot) {
                    actions.write(Deed::Place {
                        ladder: view.id.clone(),
                        rail,
                        rung,
                    });
                }
            })
        }
        (Some(Over::SetAside), _) => {
            let title = format!("Set {} aside", view.title);
            let words =
                "No advice for the rail, and the other hand won't wait for it, until you place it again.";
            choose(ui, &title, words, rails, |rail| {
                actions.write(Deed::SetAside {
                    ladder: view.id.clone(),
                    rail,
                })
            })
        }
        _ => return,
    };
    if closed {
        state.over = None;
    }
}

fn choose(ui: &mut Ui, title: &str, words: &str, rails: &[(Rail, &str)], mut take: impl FnMut(Rail)) -> bool {
    SheetFrame::new(title).show(ui, |ui| {
        let theme = Theme::of(ui);
        ui.colored_label(*theme.ink2, words);
        ui.add_space(10.0);
        ui.horizontal_wrapped(|ui| {
            let mut taken = false;
            for (rail, name) in rails {
                // Where there is a choice none of them is the main one.
                let button = match rails {
                    [_] => Button::main(name),
                    _ => Button::plain(name),
                };
                if button.flow(ui).clicked() {
                    take(*rail);
                    taken = true;
                }
            }
            taken
        })
        .inner
    })
}
