use crate::choice::choice;

choice! {
    /// The error that leads to a wrong answer.
    Mistake: "mistake" {
        /// Divided by the wrong whole.
        Denominator = "denominator" => "divided by the wrong whole",
        /// Took a part for the whole, or the whole for a part.
        PartAndWhole = "part-and-whole" => "took a part for the whole, or the whole for a part",
        /// Gave the other part.
        OtherPart = "other-part" => "gave the other part",
        /// Added what has to be taken off, or what has to be averaged.
        Added = "added" => "added what has to be taken off, or to be averaged",
        /// Multiplied where it has to be divided, or the other way round.
        Inverted = "inverted" => "multiplied where it has to be divided, or divided where it has to be multiplied",
        /// Took volumes for percent.
        VolumesForPercent = "volumes-for-percent" => "took volumes for percent",
        /// Took percent by volume for percent by mass: the density is left out.
        WvForWw = "wv-for-ww" => "took % w/v for % w/w: the density is left out",
        /// Moved the decimal point.
        DecimalPoint = "decimal-point" => "moved the decimal point",
        /// Left out that two molecules of peroxide give one of oxygen.
        Stoichiometry = "stoichiometry" => "left out that two molecules of peroxide give one of oxygen",
        /// Took the plain mean, whatever there is of each.
        PlainMean = "plain-mean" => "took the plain mean, whatever there is of each",
        /// Cut off instead of rounding to the nearest.
        CutOff = "cut-off" => "cut off instead of rounding to the nearest",
        /// Rounded up instead of to the nearest.
        RoundedUp = "rounded-up" => "rounded up instead of to the nearest",
        /// Rounded to another step than the scale has.
        WrongStep = "wrong-step" => "rounded to another step than the scale has",
        /// Rounded in the middle of the sum.
        RoundedTooEarly = "rounded-too-early" => "rounded in the middle of the sum",
        /// Took the bottle for the hair: what was mixed in is left out.
        BottleForHair = "bottle-for-hair" => "took the bottle for the hair: what was mixed in is left out",
        /// Counted both ends.
        BothEnds = "both-ends" => "counted both ends",
        /// Counted one too few.
        OneTooFew = "one-too-few" => "counted one too few",
        /// Took one more than is enough.
        OneTooMany = "one-too-many" => "took one more than is enough",
        /// Took one of the givens for the answer.
        GivenForAnswer = "given-for-answer" => "took a number that is given for the answer",
        /// Took the rule for the other question.
        OtherRule = "other-rule" => "took the rule for another question",
        /// Multiplied by the lift instead of by two.
        LiftAsFactor = "lift-as-factor" => "multiplied by the lift instead of by two",
        /// Read the row beside.
        NextRow = "next-row" => "read the row beside the right one",
        /// Named the warmth itself.
        SameHue = "same-hue" => "named the warmth itself, not what neutralises it",
        /// Named the hue beside the complement.
        NeighbourHue = "neighbour-hue" => "named the hue beside the complement",
        /// Took where the hair starts for where it ends.
        StartForEnd = "start-for-end" => "took the level that the hair starts from",
        /// Left a part of the sum out.
        LeftOut = "left-out" => "left a part out",
        /// Counted weeks as months.
        WeeksForMonths = "weeks-for-months" => "counted weeks as months",
        /// Counted an hour as a hundred minutes.
        HundredMinutes = "hundred-minutes" => "counted an hour as a hundred minutes",
        /// Took the margin for the mark-up.
        MarginForMarkup = "margin-for-markup" => "took the margin for the mark-up",
        /// Took the mark-up for the margin.
        MarkupForMargin = "markup-for-margin" => "took the mark-up for the margin",
        /// Took the tax off the gross price.
        TaxOffGross = "tax-off-gross" => "took the rate of the gross price, which holds the tax already",
        /// Rounded down what has to be whole and enough.
        RoundedDown = "rounded-down" => "rounded down, which is not enough",
    }
}
