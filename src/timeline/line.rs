//! A straight line through points by least squares.

/// y = intercept + slope · x.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Line {
    /// Change of y for one of x.
    pub slope: f64,
    /// y at x = 0.
    pub intercept: f64,
}

/// The line with the least sum of squared distances in y; none for fewer than two different x.
pub fn least_squares(points: &[(f64, f64)]) -> Option<Line> {
    let count = points.iter().map(|_| 1.0).sum::<f64>();
    let mean_x = points.iter().map(|(x, _)| x).sum::<f64>() / count;
    let mean_y = points.iter().map(|(_, y)| y).sum::<f64>() / count;
    let spread = points.iter().map(|(x, _)| (x - mean_x).powi(2)).sum::<f64>();
    let together = points.iter().map(|(x, y)| (x - mean_x) * (y - mean_y));
    let slope = together.sum::<f64>() / spread;
    (spread > 0.0 && slope.is_finite()).then_some(Line {
        slope,
        intercept: mean_y - slope * mean_x,
    })
}

/// Weight in pounds and chin-ups of 20 middle-aged men in a fitness club: the data set of Linnerud (North Carolina State
/// University), as scikit-learn 1.9.1 carries it (`sklearn.datasets.load_linnerud`).
#[cfg(test)]
pub(crate) const LINNERUD: [(f64, f64); 20] = [
    (191.0, 5.0),
    (189.0, 2.0),
    (193.0, 12.0),
    (162.0, 12.0),
    (189.0, 13.0),
    (182.0, 4.0),
    (211.0, 8.0),
    (167.0, 6.0),
    (176.0, 15.0),
    (154.0, 17.0),
    (169.0, 17.0),
    (166.0, 13.0),
    (154.0, 14.0),
    (247.0, 1.0),
    (193.0, 6.0),
    (202.0, 12.0),
    (176.0, 4.0),
    (157.0, 11.0),
    (156.0, 15.0),
    (138.0, 2.0),
];

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn chin_ups_on_weight_as_numpy_has_it() {
        // python3 -c "
        // import numpy
        // from sklearn.datasets import load_linnerud
        // d = load_linnerud()
        // slope, intercept = numpy.polyfit(d.target[:, 0], d.data[:, 0], 1)
        // print(repr(slope), repr(intercept))"
        let line = least_squares(&LINNERUD).unwrap();
        assert!((line.slope - -0.083_434_057_395_448_42).abs() < 1e-9, "{line:?}");
        assert!((line.intercept - 24.351_322_650_827_083).abs() < 1e-9, "{line:?}");
    }

    #[test]
    fn one_place_on_the_x_axis_gives_no_line() {
        assert_eq!(least_squares(&[(1.0, 2.0), (1.0, 3.0)]), None);
        assert_eq!(least_squares(&[]), None);
    }
}
