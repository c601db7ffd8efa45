use crate::choice::choice;

choice! {
    /// When in a service something is watched for.
    ObservedStage: "stage" {
        /// Before anything is decided.
        Consultation = "consultation",
        /// What is to be used.
        Formula = "formula",
        /// Before the first brush.
        Preparation = "preparation",
        /// From the first brush to the last.
        Application = "application",
        /// Until the rinse.
        Development = "development",
        /// After the rinse.
        Afterwards = "afterwards",
        /// What it costs.
        Money = "money",
    }
}
