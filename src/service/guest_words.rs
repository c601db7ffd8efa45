//! What the rules are called where a guest reads: findings are written for the bench.

use crate::finding::Rule;

/// What a guest is told where this rule stops or warns; none where it is the colourist's own work (grams, stock, scale).
///
/// The findings themselves are written for the bench: they name fields of the file and products.
pub(crate) const fn told(rule: Rule) -> Option<&'static str> {
    Some(match rule {
        Rule::EarlierReaction => {
            "You reacted to hair colour or lightener before. The next time can be worse: see a doctor before either is used on you."
        }
        Rule::Airways => {
            "Asthma: dust and spray of lightener can set it off. Ask a doctor first, and say at once when you cough."
        }
        Rule::Age => "Hair colour is not meant for anyone under sixteen, and lightener may not be either.",
        Rule::BlackHenna => "A black-henna tattoo raises the risk of an allergy to hair colour.",
        Rule::Health => {
            "Skin disease, medicine, pregnancy, nursing or loss of hair: ask the doctor who treats you before we begin, and tell us."
        }
        Rule::MetalSalts => {
            "Metal salts in the hair, which henna may hold, react with peroxide: hair can get hot and break. We begin only when a test of cut hair is clear."
        }
        Rule::Scalp => "Your scalp is sore or broken: it has to heal first.",
        Rule::Elasticity => "Your hair does not stretch and return as sound hair does: it breaks sooner.",
        Rule::SkinTest => "You have had no skin test for this service that was waited for and read as clear.",
        Rule::SkinTestAge => "Your skin test is too old by our rule: it is done again.",
        Rule::StrandTest => {
            "No strand test shows that your hair stands this service: before one, neither time nor result is known."
        }
        Rule::Law => "What is planned does not keep within the law as it stands: it has to be changed first.",
        Rule::Untoned => "Some of the lightened hair gets no toner: it stays as warm as lightener leaves it.",
        Rule::EarlierService => "What was done to your hair before can make it weaker and the result less even.",
        Rule::Overlap => "Some of your hair is lightened already: lightening it again can break it.",
        Rule::Lift => {
            "For some of your hair, the level wanted is not what one visit with these products usually gives."
        }
        Rule::Alkalinity => {
            "One of the mixes is more alkaline than most: it swells the hair and irritates the skin more."
        }
        Rule::WhiteHair => "White hair may take the colour less fully, or look flatter, than wished.",
        Rule::DepthAtRoot => "At the root the colour is darker or lighter than your hair grows: new growth will show.",
        Rule::Hairline => "The hairline comes out darker than the hair beside it.",
        Rule::Transition => "Where two colours meet in one foil, a line may show.",
        Rule::Wish => "What is planned is not all that you wished for: agree with your colourist on what can be had.",
        Rule::Contrast => "Sections side by side may read as one colour.",
        Rule::HeadReads => "By our model the whole does not read as you asked.",
        Rule::Technique => {
            "The technique planned does not give the start, or the weeks between visits, that you asked for."
        }
        Rule::FirstStep => "A step before the colour cannot be done as planned: ask what is done instead.",
        Rule::PrePigmentation => {
            "Lightened hair that goes darker needs warm pigment first, or it turns out dull and fades soon."
        }
        Rule::TonerLevel => "The toner may come out darker or warmer than wished, or not show.",
        Rule::OverNeutralising => "The toner may turn some of the hair cooler or duller than wished.",
        Rule::Porosity => {
            "Your hair is porous or uneven: it takes up more, and can turn out darker and cooler in places."
        }
        Rule::CoolDose => "Very light hair may take on a blue or violet cast.",
        Rule::History
        | Rule::Developer
        | Rule::Time
        | Rule::Look
        | Rule::Sequence
        | Rule::Rinse
        | Rule::OnScalp
        | Rule::FinishTogether
        | Rule::LevelSeen
        | Rule::StrandBook
        | Rule::Ratio
        | Rule::Amount
        | Rule::Stock
        | Rule::ListPrice
        | Rule::Scale
        | Rule::Pace
        | Rule::Regrowth
        | Rule::TonerFound => return None,
    })
}

/// What these are about, each name once; what is the colourist's own work is left out.
pub(crate) fn names(rules: impl IntoIterator<Item = Rule>) -> Vec<&'static str> {
    let mut names: Vec<&str> = Vec::new();
    for name in rules.into_iter().filter_map(named) {
        if !names.contains(&name) {
            names.push(name);
        }
    }
    names
}

/// What this rule is about, by a short name for a guest; none where it is the colourist's own work.
const fn named(rule: Rule) -> Option<&'static str> {
    Some(match rule {
        Rule::History | Rule::EarlierService => "what was done to your hair before",
        Rule::EarlierReaction => "an earlier reaction to colour or lightener",
        Rule::Airways => "asthma",
        Rule::Age => "your age",
        Rule::BlackHenna => "a black-henna tattoo",
        Rule::Health => "your health",
        Rule::MetalSalts => "metal in your hair",
        Rule::Scalp => "your scalp",
        Rule::Elasticity => "how your hair stretches",
        Rule::SkinTest | Rule::SkinTestAge => "the skin test",
        Rule::StrandTest => "the strand test",
        Rule::Law => "what the law allows",
        Rule::Untoned | Rule::TonerLevel | Rule::OverNeutralising => "the toner",
        Rule::Overlap => "hair that is lightened already",
        Rule::Lift => "how far your hair lightens",
        Rule::Alkalinity => "how strong a mix is on the skin",
        Rule::WhiteHair => "how white hair takes the colour",
        Rule::DepthAtRoot => "the colour at the root",
        Rule::Hairline => "the colour at the hairline",
        Rule::Transition => "where two colours meet",
        Rule::Wish => "what you wish for",
        Rule::Contrast => "how much the colours differ",
        Rule::HeadReads => "how the whole looks",
        Rule::Technique => "how soon it shows again",
        Rule::FirstStep | Rule::PrePigmentation => "what comes before the colour",
        Rule::Porosity => "how your hair takes up colour",
        Rule::CoolDose => "a blue or violet cast",
        Rule::Developer
        | Rule::Time
        | Rule::Look
        | Rule::Sequence
        | Rule::Rinse
        | Rule::OnScalp
        | Rule::FinishTogether
        | Rule::LevelSeen
        | Rule::StrandBook
        | Rule::Ratio
        | Rule::Amount
        | Rule::Stock
        | Rule::ListPrice
        | Rule::Scale
        | Rule::Pace
        | Rule::Regrowth
        | Rule::TonerFound => return None,
    })
}
