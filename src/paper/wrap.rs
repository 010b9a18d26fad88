//! Sentences in lines no wider than their column.

use super::face::{Face, width};

/// `words` in lines of at most `room` points. A word wider than that is broken between letters, so that nothing runs off the page.
pub(super) fn wrap(words: &str, face: Face, size: f32, room: f32) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    let mut line = String::new();
    for word in words.split(' ').flat_map(|word| broken(word, face, size, room)) {
        let longer = if line.is_empty() {
            word.clone()
        } else {
            format!("{line} {word}")
        };
        if line.is_empty() || width(&longer, face, size) <= room {
            line = longer;
        } else {
            lines.push(std::mem::replace(&mut line, word));
        }
    }
    if !line.is_empty() {
        lines.push(line);
    }
    lines
}

fn broken(word: &str, face: Face, size: f32, room: f32) -> Vec<String> {
    let mut parts = vec![String::new()];
    for letter in word.chars() {
        let Some(last) = parts.last_mut() else { continue };
        last.push(letter);
        if width(last, face, size) > room && last.chars().count() > 1 {
            last.pop();
            parts.push(letter.to_string());
        }
    }
    parts
}

/// The largest of `sizes` at which `words` fit into `room`; the last one otherwise.
pub(super) fn fitting(words: &str, face: Face, sizes: &[f32], room: f32) -> f32 {
    let fits = |size: &&f32| width(words, face, **size) <= room;
    sizes.iter().find(fits).or(sizes.last()).copied().unwrap_or(9.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_line_is_wider_than_its_column_and_no_letter_is_lost() {
        let long = "Wolfeschlegelsteinhausenbergerdorff ".repeat(4) + "x";
        for room in [30.0, 90.0, 400.0] {
            let lines = wrap(long.trim(), Face::Text, 11.0, room);
            assert!(lines.iter().all(|line| width(line, Face::Text, 11.0) <= room));
            let letters = |text: &str| text.chars().filter(|c| *c != ' ').collect::<String>();
            assert_eq!(letters(&lines.concat()), letters(&long));
        }
    }
}
