use crate::choice::choice;

choice! {
    /// The rules that a finding can come from, in the order of the job.
    Rule: "rule" {
        /// The history of the hair and of the guest is known.
        History = "history",
        /// A reaction to hair colour or lightener in the past.
        EarlierReaction = "earlier-reaction" => "earlier reaction",
        /// Persulfate dust and spray reach the airways.
        Airways = "airways",
        /// The age from which oxidative products are meant for use.
        Age = "age",
        /// A black-henna tattoo raises the risk of allergy.
        BlackHenna = "black-henna" => "black henna",
        /// Skin, medicine, pregnancy, loss of hair: what a doctor should be asked about.
        Health = "health",
        /// Metallic salts and peroxide react.
        MetalSalts = "metal-salts" => "metal salts",
        /// The scalp is sound.
        Scalp = "scalp",
        /// The fibre stretches and returns.
        Elasticity = "elasticity",
        /// The skin test was done, waited for and read.
        SkinTest = "skin-test" => "skin test",
        /// The skin test is not too old.
        SkinTestAge = "skin-test-age" => "skin test age",
        /// A strand was tested with the mixes of the service.
        StrandTest = "strand-test" => "strand test",
        /// The law's ceiling for what is on the hair.
        Law = "law",
        /// The product's own limit for the developer.
        Developer = "developer",
        /// The product's own limit for the time.
        Time = "time",
        /// Somebody has a hand free when the hair is to be looked at.
        Look = "look",
        /// The sections are worked in an order that suits the hair.
        Sequence = "sequence",
        /// What is rinsed does not run into what has to stay on.
        Rinse = "rinse",
        /// The warmth that lightener leaves is toned where another tone is wanted.
        Untoned = "untoned",
        /// The product may touch the scalp.
        OnScalp = "on-scalp" => "on scalp",
        /// What was done to the hair before weakens it or sits in it.
        EarlierService = "earlier-service" => "earlier service",
        /// What is planned is what the guest wants, zone by zone.
        Wish = "wish",
        /// Fresh mix stays off hair that is lightened already.
        Overlap = "overlap",
        /// The levels asked for are within what the product does.
        Lift = "lift",
        /// How alkaline a mix is, where its maker says so.
        Alkalinity = "alkalinity",
        /// Sections whose strength is left to the plan are done at the same time.
        FinishTogether = "finish-together" => "finish together",
        /// A level seen in mid-service moves the finish.
        LevelSeen = "level-seen" => "level seen",
        /// The salon's own strand readings.
        StrandBook = "strand-book" => "strand book",
        /// White hair is covered.
        WhiteHair = "white-hair" => "white hair",
        /// The ratio of a mix is written the usual way round.
        Ratio = "ratio",
        /// There is enough mix for the hair.
        Amount = "amount",
        /// What is in hand covers what the plan takes.
        Stock = "stock",
        /// The price of the list pays for the service.
        ListPrice = "list-price" => "list price",
        /// The scale is fine enough for the bowl.
        Scale = "scale",
        /// The first strands are not done before the last are on.
        Pace = "pace",
        /// The root is not darker than the natural base.
        DepthAtRoot = "depth-at-root" => "depth at the root",
        /// The hairline is at least as light as what lies beside it.
        Hairline = "hairline",
        /// Two formulas in one foil need a tone between them.
        Transition = "transition",
        /// Two sections that should differ, or should not.
        Contrast = "contrast",
        /// The head reads as it is wanted: bright outline, bright front, or even.
        HeadReads = "head-reads" => "how the head reads",
        /// The technique gives the start and the upkeep that are wanted.
        Technique = "technique",
        /// Bands and weeks say the same of what has grown in.
        Regrowth = "regrowth",
        /// Steps before the colour that are asked for, or planned.
        FirstStep = "first-step" => "step before",
        /// Going darker on lightened hair needs warm pigment first.
        PrePigmentation = "pre-pigmentation",
        /// What was found for a look that is wanted.
        TonerFound = "toner-found" => "toner found",
        /// Colour that only deposits does not lighten.
        TonerLevel = "toner-level" => "toner level",
        /// The neutralising tone is stronger than the warmth it meets.
        OverNeutralising = "over-neutralising",
        /// Porous hair takes up more.
        Porosity = "porosity",
        /// Blue or violet is a large part of the mix for hair this light.
        CoolDose = "cool-dose" => "cool dose",
    }
}
