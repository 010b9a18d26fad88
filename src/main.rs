//! The program: reads the arguments and the clock, then hands over.

fn main() {}
