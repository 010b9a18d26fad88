//! The outline of a RON text: which value stands where, so that a problem found later can point at its token.

use std::ops::Range;

use super::tokens::{Kind, Token, Tokens};

/// A way from the root of a file to one value: fields by name, items by number.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub(in crate::catalogue) struct Spot(Vec<Step>);

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Step {
    Field(&'static str),
    Item(usize),
}

impl Spot {
    /// The file's outermost value.
    pub fn root() -> Self {
        Self::default()
    }

    /// The value of a field of this one.
    pub fn field(&self, name: &'static str) -> Self {
        self.then(Step::Field(name))
    }

    /// An item of this one, from 0.
    pub fn item(&self, index: usize) -> Self {
        self.then(Step::Item(index))
    }

    /// Whether it lies in the item of this number of the outermost list.
    pub fn is_in_item(&self, index: usize) -> bool {
        self.0.first() == Some(&Step::Item(index))
    }

    fn then(&self, step: Step) -> Self {
        Self(self.0.iter().copied().chain([step]).collect())
    }
}

/// One value of the text.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Node {
    /// Its bytes, with name and brackets.
    pub span: Range<usize>,
    /// What is in its brackets.
    pub inside: Inside,
}

/// What a value holds.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) enum Inside {
    /// No brackets.
    Leaf,
    /// `[a, b]`, `(a, b)`, `Name(a)`
    Items(Vec<Node>),
    /// `(key: value)`, `{key: value}`; the key's bytes and the value.
    Fields(Vec<(Range<usize>, Node)>),
}

impl Node {
    /// The outline of `text`; none where there is no value. Brackets must not nest deeper than the stack allows: the reader
    /// checks that first.
    pub fn of(text: &str) -> Option<Node> {
        let tokens: Vec<Token> = Tokens::of(text).collect();
        let mut walk = Walk { text, tokens, at: 0 };
        walk.skip_attributes();
        walk.value()
    }

    /// The items of a list.
    pub fn items(&self) -> &[Node] {
        match &self.inside {
            Inside::Items(items) => items,
            _ => &[],
        }
    }

    /// The value of a field, by name.
    pub fn field(&self, text: &str, name: &str) -> Option<&Node> {
        let fields = match &self.inside {
            Inside::Fields(fields) => fields,
            // `Some((…))` is the same value as `(…)`.
            Inside::Items(items) if items.len() == 1 => return items.first()?.field(text, name),
            _ => return None,
        };
        fields
            .iter()
            .find(|(key, _)| text.get(key.clone()) == Some(name))
            .map(|(_, value)| value)
    }

    /// The bytes to point at for `spot`: the value itself, or, where the file is silent, the `id` of what lacks it.
    pub fn point_at(&self, text: &str, spot: &Spot) -> Range<usize> {
        let mut node = self;
        let mut nearest_id = self.field(text, "id");
        for step in &spot.0 {
            let next = match step {
                Step::Field(name) => node.field(text, name),
                Step::Item(index) => node.items().get(*index),
            };
            match next {
                Some(found) => node = found,
                None if matches!(node.inside, Inside::Leaf) => break,
                None => return nearest_id.unwrap_or(node).span.clone(),
            }
            nearest_id = node.field(text, "id").or(nearest_id);
        }
        node.span.clone()
    }

    /// Every field key and every bare value, with its bytes, in the order of the text.
    pub fn keys(&self, found: &mut Vec<Range<usize>>) {
        match &self.inside {
            Inside::Leaf => {}
            Inside::Items(items) => items.iter().for_each(|item| item.keys(found)),
            Inside::Fields(fields) => {
                for (key, value) in fields {
                    found.push(key.clone());
                    value.keys(found);
                }
            }
        }
    }
}

struct Walk<'a> {
    text: &'a str,
    tokens: Vec<Token>,
    at: usize,
}

impl Walk<'_> {
    fn kind(&self, ahead: usize) -> Option<Kind> {
        self.tokens.get(self.at + ahead).map(|token| token.kind)
    }

    fn span(&self) -> Range<usize> {
        self.tokens
            .get(self.at)
            .map_or(self.text.len()..self.text.len(), |token| token.span.clone())
    }

    /// Leaves out `#![enable(…)]`.
    fn skip_attributes(&mut self) {
        while self
            .text
            .get(self.span())
            .is_some_and(|word| word.starts_with('#'))
        {
            self.at += 1;
            self.value();
        }
    }

    fn value(&mut self) -> Option<Node> {
        let first = self.span();
        match self.kind(0)? {
            Kind::Open(_) => Some(self.bracketed(first.start)),
            Kind::Word if matches!(self.kind(1), Some(Kind::Open(b'('))) => {
                self.at += 1;
                Some(self.bracketed(first.start))
            }
            Kind::Word | Kind::Text => {
                self.at += 1;
                Some(Node {
                    span: first,
                    inside: Inside::Leaf,
                })
            }
            Kind::Close(_) | Kind::Comma | Kind::Colon => None,
        }
    }

    /// Everything up to the bracket that closes; the next token opens it.
    fn bracketed(&mut self, start: usize) -> Node {
        let mut end = self.span().end;
        self.at += 1;
        let mut items = Vec::new();
        let mut fields = Vec::new();
        loop {
            match self.kind(0) {
                None => break,
                Some(Kind::Close(_)) => {
                    end = self.span().end;
                    self.at += 1;
                    break;
                }
                Some(Kind::Comma | Kind::Colon) => self.at += 1,
                Some(_) if self.kind(1) == Some(Kind::Colon) => {
                    let key = self.span();
                    self.at += 2;
                    if let Some(value) = self.value() {
                        fields.push((key, value));
                    }
                }
                Some(_) => items.extend(self.value()),
            }
            end = self
                .tokens
                .get(self.at.wrapping_sub(1))
                .map_or(end, |token| token.span.end);
        }
        let inside = if fields.is_empty() {
            Inside::Items(items)
        } else {
            Inside::Fields(fields)
        };
        Node {
            span: start..end,
            inside,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_spot_leads_to_the_bytes_of_its_value() {
        let text = "#![enable(implicit_some)]\n(id: \"a\", rungs: [(id: \"b\", work: Some((sets: 3)))])";
        let node = Node::of(text).unwrap();
        let rung = Spot::root().field("rungs").item(0);
        assert_eq!(&text[node.point_at(text, &rung.field("work").field("sets"))], "3");
        assert_eq!(&text[node.point_at(text, &rung.field("demand"))], "\"b\"");
        assert_eq!(
            &text[node.point_at(text, &Spot::root().field("sources"))],
            "\"a\""
        );
    }
}
