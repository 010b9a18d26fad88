//! De Leva's segment table as published: J Biomech 1996; 29:1223–1230, Table 4 (adjusted Zatsiorsky–Seluyanov), both sexes.
//!
//! The rows belong together: the shank here ends at the ankle's joint centre, the trunk at mid-shoulder and mid-hip. Other
//! definitions of the same segments go with other percentages.

/// One row of de Leva's Table 4: length, mass of one side in percent of body mass, centre of mass in percent of the length from
/// the proximal (or upper) end.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Row {
    /// Length, mm, in a body of [`Published::stature_mm`].
    pub length_mm: f64,
    /// Mass, percent of the body's, one side.
    pub mass_pct: f64,
    /// Centre of mass, percent of the length from the upper or proximal end.
    pub centre_pct: f64,
}

/// De Leva's Table 4 as published, the rows that are used here.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Published {
    /// Stature that the lengths belong to, mm.
    pub stature_mm: f64,
    /// Head and neck, vertex to cervicale.
    pub head: Row,
    /// Cervicale to mid-hip, mm.
    pub cervicale_hip_mm: f64,
    /// Trunk, mid-shoulder to mid-hip.
    pub trunk: Row,
    /// Navel (omphalion) to mid-hip, mm.
    pub navel_hip_mm: f64,
    /// Upper arm.
    pub upper_arm: Row,
    /// Forearm, elbow to wrist centre.
    pub forearm: Row,
    /// Hand, wrist to third knuckle.
    pub hand: Row,
    /// Thigh, hip to knee centre.
    pub thigh: Row,
    /// Shank, knee to ankle centre.
    pub shank: Row,
    /// Foot, heel to toe tip.
    pub foot: Row,
    /// Shoulder width (between the joint centres), fraction of height.
    pub shoulder_width: f64,
}

const fn row(length_mm: f64, mass_pct: f64, centre_pct: f64) -> Row {
    Row {
        length_mm,
        mass_pct,
        centre_pct,
    }
}

/// De Leva 1996, Table 4, men. Shoulder width .22 of height: a secondary source, not the table. If a row is wrong, every lever
/// moment is.
pub const DE_LEVA_MALE: Published = Published {
    stature_mm: 1741.0,
    head: row(242.9, 6.94, 50.02),
    cervicale_hip_mm: 603.3,
    trunk: row(515.5, 43.46, 43.10),
    navel_hip_mm: 145.7,
    upper_arm: row(281.7, 2.71, 57.72),
    forearm: row(268.9, 1.62, 45.74),
    hand: row(86.2, 0.61, 79.00),
    thigh: row(422.2, 14.16, 40.95),
    shank: row(440.3, 4.33, 43.95),
    foot: row(258.1, 1.37, 44.15),
    shoulder_width: 0.22,
};

/// De Leva 1996, Table 4, women; its masses sum to 99.99 % and are rescaled. Shoulder width .23 of height: a secondary source.
pub const DE_LEVA_FEMALE: Published = Published {
    stature_mm: 1735.0,
    head: row(243.7, 6.68, 48.41),
    cervicale_hip_mm: 614.8,
    trunk: row(497.9, 42.57, 37.82),
    navel_hip_mm: 181.5,
    upper_arm: row(275.1, 2.55, 57.54),
    forearm: row(264.3, 1.38, 45.59),
    hand: row(78.0, 0.56, 74.74),
    thigh: row(368.5, 14.78, 36.12),
    shank: row(438.6, 4.81, 43.52),
    foot: row(228.3, 1.29, 40.14),
    shoulder_width: 0.23,
};

impl Published {
    /// Sum of all masses, percent: 100.00 men, 99.99 women.
    pub const fn mass_sum_pct(&self) -> f64 {
        let one_side = self.upper_arm.mass_pct
            + self.forearm.mass_pct
            + self.hand.mass_pct
            + self.thigh.mass_pct
            + self.shank.mass_pct
            + self.foot.mass_pct;
        self.head.mass_pct + self.trunk.mass_pct + 2.0 * one_side
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_published_masses_sum_as_published() {
        // De Leva 1996, Table 4: 100.00 % men, 99.99 % women.
        assert!((DE_LEVA_MALE.mass_sum_pct() - 100.0).abs() < 1e-9);
        assert!((DE_LEVA_FEMALE.mass_sum_pct() - 99.99).abs() < 1e-9);
    }

    #[test]
    fn both_trunk_definitions_put_the_trunk_centre_at_one_place() {
        // De Leva 1996, Table 4: cervicale–mid-hip rows 51.38 % men, 49.64 % women, against the mid-shoulder–mid-hip rows.
        for (table, centre_pct) in [(DE_LEVA_MALE, 51.38), (DE_LEVA_FEMALE, 49.64)] {
            let from_hip = table.trunk.length_mm * (1.0 - table.trunk.centre_pct / 100.0);
            let other = table.cervicale_hip_mm * (1.0 - centre_pct / 100.0);
            assert!((from_hip - other).abs() < 0.2, "{from_hip} mm and {other} mm");
        }
    }
}
