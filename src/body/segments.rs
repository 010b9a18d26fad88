//! A body of mass 1 and height 1: how mass and length are spread over its segments.
//!
//! The first opinion is de Leva 1996, both sexes; the second is Winter, Biomechanics and Motor Control (Dempster's masses), with
//! Drillis & Contini's 1966 lengths. The rows of one table belong together and are never mixed.

use super::de_leva::{DE_LEVA_FEMALE, DE_LEVA_MALE, Published, Row};

/// A limb segment, one side.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Limb {
    /// Mass, fraction of the body's.
    pub mass: f64,
    /// Length, fraction of height.
    pub length: f64,
    /// Centre of mass, fraction of the length from the proximal end.
    pub centre: f64,
}

/// A body of mass 1 and height 1: everything is a fraction of the body's mass or height.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Segments {
    /// Mass of head and neck.
    pub head_mass: f64,
    /// Centre of mass of the head beyond the shoulder line, toward the vertex.
    pub head_beyond_shoulder: f64,
    /// Shoulder line below the vertex.
    pub shoulder_below_vertex: f64,
    /// Trunk from mid-shoulder to mid-hip; mass of the whole.
    pub trunk: Limb,
    /// Where a belt sits: from the shoulder line toward the feet.
    pub waist: f64,
    /// Upper arm.
    pub upper_arm: Limb,
    /// Forearm, to the wrist.
    pub forearm: Limb,
    /// Mass of a hand.
    pub hand_mass: f64,
    /// From the wrist to the middle of the grip, where the hand's centre of mass is put.
    pub wrist_to_grip: f64,
    /// Thigh.
    pub thigh: Limb,
    /// Shank, to the ankle's centre.
    pub shank: Limb,
    /// Foot; its length runs from heel to toe.
    pub foot: Limb,
    /// Between the shoulder joints.
    pub shoulder_width: f64,
}

/// Where along the foot, from the heel, the ankle stands. An assumption without source; 1 cm moves the full lever by 0.07 %.
pub const ANKLE_ALONG_FOOT: f64 = 0.25;

impl Segments {
    /// De Leva 1996, men.
    pub const MALE: Segments = Segments::scaled(&DE_LEVA_MALE);
    /// De Leva 1996, women.
    pub const FEMALE: Segments = Segments::scaled(&DE_LEVA_FEMALE);
    /// Halfway between both of de Leva's tables: for an athlete whose sex is not known.
    pub const MIDWAY: Segments = Segments::midway(&Segments::MALE, &Segments::FEMALE);
    /// Dempster's masses and centres as printed by Winter; lengths by Drillis & Contini 1966. Head at the ear canal, .930 of
    /// height (from memory); grip .050 beyond the wrist and the belt at .86 of the trunk (assumptions).
    pub const WINTER: Segments = Segments {
        head_mass: 0.081,
        head_beyond_shoulder: 0.930 - 0.818,
        shoulder_below_vertex: 1.0 - 0.818,
        trunk: limb(0.497, 0.818 - 0.530, 0.500),
        waist: 0.86 * (0.818 - 0.530),
        upper_arm: limb(0.028, 0.186, 0.436),
        forearm: limb(0.016, 0.146, 0.430),
        hand_mass: 0.006,
        wrist_to_grip: 0.050,
        thigh: limb(0.100, 0.530 - 0.285, 0.433),
        shank: limb(0.0465, 0.285 - 0.039, 0.433),
        foot: limb(0.0145, 0.152, 0.500),
        shoulder_width: 0.22,
    };

    /// De Leva's rows as fractions of stature and of the mass sum. The belt is put midway between navel and hips.
    const fn scaled(table: &Published) -> Segments {
        let sum = table.mass_sum_pct();
        let stature = table.stature_mm;
        Segments {
            head_mass: table.head.mass_pct / sum,
            head_beyond_shoulder: (table.cervicale_hip_mm - table.trunk.length_mm
                + table.head.length_mm * (1.0 - table.head.centre_pct / 100.0))
                / stature,
            shoulder_below_vertex: (table.head.length_mm + table.cervicale_hip_mm - table.trunk.length_mm)
                / stature,
            trunk: part(&table.trunk, sum, stature),
            waist: (table.trunk.length_mm - table.navel_hip_mm / 2.0) / stature,
            upper_arm: part(&table.upper_arm, sum, stature),
            forearm: part(&table.forearm, sum, stature),
            hand_mass: table.hand.mass_pct / sum,
            wrist_to_grip: table.hand.length_mm * table.hand.centre_pct / 100.0 / stature,
            thigh: part(&table.thigh, sum, stature),
            shank: part(&table.shank, sum, stature),
            foot: part(&table.foot, sum, stature),
            shoulder_width: table.shoulder_width,
        }
    }

    const fn midway(one: &Segments, other: &Segments) -> Segments {
        Segments {
            head_mass: f64::midpoint(one.head_mass, other.head_mass),
            head_beyond_shoulder: f64::midpoint(one.head_beyond_shoulder, other.head_beyond_shoulder),
            shoulder_below_vertex: f64::midpoint(one.shoulder_below_vertex, other.shoulder_below_vertex),
            trunk: between(&one.trunk, &other.trunk),
            waist: f64::midpoint(one.waist, other.waist),
            upper_arm: between(&one.upper_arm, &other.upper_arm),
            forearm: between(&one.forearm, &other.forearm),
            hand_mass: f64::midpoint(one.hand_mass, other.hand_mass),
            wrist_to_grip: f64::midpoint(one.wrist_to_grip, other.wrist_to_grip),
            thigh: between(&one.thigh, &other.thigh),
            shank: between(&one.shank, &other.shank),
            foot: between(&one.foot, &other.foot),
            shoulder_width: f64::midpoint(one.shoulder_width, other.shoulder_width),
        }
    }

    /// Shoulder to wrist, arm straight.
    pub const fn arm_to_wrist(&self) -> f64 {
        self.upper_arm.length + self.forearm.length
    }

    /// Shoulder to the middle of the grip, arm straight.
    pub const fn arm_to_grip(&self) -> f64 {
        self.arm_to_wrist() + self.wrist_to_grip
    }

    /// Mass of both arms, hands included.
    pub const fn arms_mass(&self) -> f64 {
        2.0 * (self.upper_arm.mass + self.forearm.mass + self.hand_mass)
    }

    /// Mass times distance from the shoulder, both upper arms and forearms along straight arms, hands left out.
    pub const fn arms_moment_without_hands(&self) -> f64 {
        let forearm = self.upper_arm.length + self.forearm.centre * self.forearm.length;
        2.0 * (self.upper_arm.mass * self.upper_arm.centre * self.upper_arm.length
            + self.forearm.mass * forearm)
    }

    /// Centre of mass of straight arms, fraction of the way from shoulder to `hand` (fraction of height).
    pub const fn arms_centre(&self, hand: f64) -> f64 {
        (self.arms_moment_without_hands() + 2.0 * self.hand_mass * hand) / (self.arms_mass() * hand)
    }

    /// Hip to ankle, leg straight.
    pub const fn hip_to_ankle(&self) -> f64 {
        self.thigh.length + self.shank.length
    }

    /// Mass of everything.
    pub const fn mass(&self) -> f64 {
        self.head_mass
            + self.trunk.mass
            + self.arms_mass()
            + 2.0 * (self.thigh.mass + self.shank.mass + self.foot.mass)
    }

    /// Height of the centre of mass over the ground, standing with arms hanging; the foot's centre halfway from ankle to sole.
    pub const fn standing_centre(&self) -> f64 {
        let shoulder = 1.0 - self.shoulder_below_vertex;
        let hip = shoulder - self.trunk.length;
        let knee = hip - self.thigh.length;
        let ankle = knee - self.shank.length;
        let arms = self.arms_mass() * shoulder
            - self.arms_moment_without_hands()
            - 2.0 * self.hand_mass * self.arm_to_grip();
        self.head_mass * (shoulder + self.head_beyond_shoulder)
            + self.trunk.mass * (shoulder - self.trunk.centre * self.trunk.length)
            + arms
            + 2.0 * self.thigh.mass * (hip - self.thigh.centre * self.thigh.length)
            + 2.0 * self.shank.mass * (knee - self.shank.centre * self.shank.length)
            + 2.0 * self.foot.mass * ankle / 2.0
    }
}

const fn limb(mass: f64, length: f64, centre: f64) -> Limb {
    Limb { mass, length, centre }
}

const fn part(row: &Row, sum_pct: f64, stature_mm: f64) -> Limb {
    limb(
        row.mass_pct / sum_pct,
        row.length_mm / stature_mm,
        row.centre_pct / 100.0,
    )
}

const fn between(one: &Limb, other: &Limb) -> Limb {
    limb(
        f64::midpoint(one.mass, other.mass),
        f64::midpoint(one.length, other.length),
        f64::midpoint(one.centre, other.centre),
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    fn is(value: f64, expected: f64, half_digit: f64) {
        assert!(
            (value - expected).abs() <= half_digit,
            "{value} is not {expected}"
        );
    }

    #[test]
    fn every_table_holds_a_whole_body() {
        for table in [
            Segments::MALE,
            Segments::FEMALE,
            Segments::MIDWAY,
            Segments::WINTER,
        ] {
            is(table.mass(), 1.0, 1e-12);
        }
    }

    #[test]
    fn the_bodies_are_built_like_the_tables_say() {
        // Independent computation from the same published tables: standing centre of mass,
        // shoulder to hip, hip to ankle, shoulder to grip, both arms, centre of the arms.
        let expected = [
            (Segments::MALE, [0.556, 0.296, 0.495, 0.355, 0.0988, 0.482]),
            (Segments::FEMALE, [0.554, 0.287, 0.465, 0.344, 0.0898, 0.479]),
            (Segments::WINTER, [0.577, 0.288, 0.491, 0.382, 0.1000, 0.447]),
        ];
        for (table, [standing, trunk, leg, arm, arms, centre]) in expected {
            is(table.standing_centre(), standing, 0.0005);
            is(table.trunk.length, trunk, 0.0005);
            is(table.hip_to_ankle(), leg, 0.0005);
            is(table.arm_to_grip(), arm, 0.0005);
            is(table.arms_mass(), arms, 0.00005);
            is(table.arms_centre(table.arm_to_grip()), centre, 0.0005);
        }
    }
}
