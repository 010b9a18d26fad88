//! A sentence with the words that carry it set strong.

/// Text in runs, each plain or strong.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Phrase(Vec<(bool, String)>);

impl Phrase {
    /// Plain words.
    pub fn plain(text: impl Into<String>) -> Self {
        Self(vec![(false, text.into())])
    }

    /// Strong words.
    pub fn strong(text: impl Into<String>) -> Self {
        Self(vec![(true, text.into())])
    }

    /// This, then plain words.
    pub fn then(mut self, text: impl Into<String>) -> Self {
        self.0.push((false, text.into()));
        self
    }

    /// This, then strong words.
    pub fn then_strong(mut self, text: impl Into<String>) -> Self {
        self.0.push((true, text.into()));
        self
    }

    /// The runs: strong or not, and the text.
    pub fn runs(&self) -> impl Iterator<Item = (bool, &str)> {
        self.0.iter().map(|(strong, text)| (*strong, text.as_str()))
    }

    /// Whether there is nothing to read.
    pub fn is_empty(&self) -> bool {
        self.0.iter().all(|(_, text)| text.is_empty())
    }

    /// The words alone, as a screen reader says them.
    pub fn text(&self) -> String {
        self.0.iter().map(|(_, text)| text.as_str()).collect()
    }
}

impl From<&str> for Phrase {
    fn from(text: &str) -> Self {
        Self::plain(text)
    }
}

impl From<String> for Phrase {
    fn from(text: String) -> Self {
        Self::plain(text)
    }
}
