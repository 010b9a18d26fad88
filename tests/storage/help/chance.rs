//! Chance that comes out the same every time: SplitMix64 (Steele, Lea and Flood, OOPSLA 2014).

pub struct Chance(u64);

impl Chance {
    pub fn new(seed: u64) -> Self {
        Self(seed)
    }

    pub fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mixed = (self.0 ^ (self.0 >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        let mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        mixed ^ (mixed >> 31)
    }

    /// A number from 0 to below `end`.
    pub fn below(&mut self, end: u64) -> u64 {
        self.next() % end
    }

    pub fn shuffle<T>(&mut self, items: &mut [T]) {
        for at in (1..items.len()).rev() {
            let other = usize::try_from(self.below(at as u64 + 1)).unwrap();
            items.swap(at, other);
        }
    }
}
