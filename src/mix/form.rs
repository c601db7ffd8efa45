use crate::choice::choice;

choice! {
    /// The chemical form a level is stated in. A sulfate weighs more than the base in it, so 2 % of one is not 2 % of the
    /// other.
    Form: "form" {
        /// The amine itself, whatever salt it was added as.
        FreeBase = "free-base" => "free base",
        /// The sulfate.
        Sulfate = "sulfate",
        /// The hydrochloride with one HCl, or as the source writes it without a count.
        Hydrochloride = "hydrochloride",
        /// The salt with two HCl.
        Dihydrochloride = "dihydrochloride",
        /// The salt with four HCl.
        Tetrahydrochloride = "tetrahydrochloride",
        /// Hydrogen peroxide itself.
        HydrogenPeroxide = "h2o2" => "hydrogen peroxide",
        /// Hydrogen peroxide, added as such or set free by another compound.
        HydrogenPeroxideReleased = "h2o2-released" => "hydrogen peroxide present or released",
        /// Ammonia, also when added as its solution in water.
        Ammonia = "nh3" => "ammonia",
        /// Free sulfur dioxide.
        SulfurDioxide = "so2" => "free sulfur dioxide",
        /// The metal strontium.
        Strontium = "strontium",
        /// The persulfate ion.
        Persulfate = "persulfate",
    }
}
