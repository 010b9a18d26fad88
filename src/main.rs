//! The program: hands the arguments to the command line, and the window to it where one is built in.

use std::process::ExitCode;

fn main() -> ExitCode {
    rungwright::cli::run(WINDOW)
}

#[cfg(feature = "window")]
const WINDOW: Option<rungwright::cli::start::OpenWindow> = Some(window);
#[cfg(not(feature = "window"))]
const WINDOW: Option<rungwright::cli::start::OpenWindow> = None;

#[cfg(feature = "window")]
fn window(opening: rungwright::cli::start::Opening) -> Result<(), String> {
    use rungwright::cli::start::{Opening, lay_demo};
    use rungwright::ui::shelf::{Shelf, open_window};

    let Opening {
        machine,
        device,
        root,
        is_demo,
        on,
    } = opening;
    let demo_machine = machine.clone();
    let demo = move |on| lay_demo(&demo_machine, on);
    let shelf = Shelf::new(machine.clone(), device, on, std::sync::Arc::new(demo));
    open_window(&machine, shelf, root, is_demo)
}
