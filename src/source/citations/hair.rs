//! Sources cited by the `hair` and `head` rules.

use crate::source::cite;

cite! {
    /// Density of hair on one site of twenty people.
    DENSITY_OF_PEOPLE = "density-of-people", Retrieved,
        "J. Soc. Cosmet. Chem. 28(5) (1977), Table I: left side of the head of 20 adults of 24 to 59 years, 95 to 295, mean \
         211 hairs/cm2; variation between people 0.26 computed from the 16 legible rows";
    /// Density of hair by group.
    DENSITY_BY_GROUP = "density-by-group", Retrieved,
        "hair-science textbook quoting Loussouarn and others, Table 1: African 161 (50), Asian 175 (54), Caucasian 226 (73) \
         hairs/cm2, young adults, mean and standard deviation";
    /// Cross-section of hair by group.
    SECTION_BY_GROUP = "section-by-group", Retrieved,
        "hair-science textbook, ch. 6 Table 3: cross-section and ellipticity, Asian 5063 um2 and 1.29, Caucasian 4079 and \
         1.41, African American 4210 and 1.66";
    /// Cross-section of hair of thirteen people.
    SECTION_OF_PEOPLE = "section-of-people", Computed,
        "open data of 1737 scalp-hair cross-sections of 13 people, fibermorph manuscript: mean 4216 um2, variation between \
         people 0.31, without the finest person 0.22";
    /// Growth by group.
    GROWTH_BY_GROUP = "growth-by-group", Retrieved,
        "hair-science textbook quoting Loussouarn and others, Table 1: African 280 (50), Asian 411 (53), Caucasian 367 (56) \
         um/day, young adults, mean and standard deviation";
    /// Growth in a review.
    GROWTH_REVIEW = "growth-review", Retrieved,
        "Barth, Measurement of hair growth (1986), summary: scalp 0.37 mm/day";
    /// Classes of diameter.
    DIAMETER_CLASSES = "diameter-classes", Retrieved,
        "hair-science web log (2012): fine below 60 um, medium 60 to 80, coarse above 80; no standard was found";
    /// Caliper and camera on the same hairs.
    CALIPER_AND_CAMERA = "caliper-and-camera", Retrieved,
        "Arch. Aesthetic Plast. Surg., micrometer caliper against phototrichogram, 10 Korean women: 76.9 and 108.8 um, the \
         camera sees the long axis; ratio 1.41";
    /// Area of the scalp.
    SCALP_AREA = "scalp-area", Retrieved,
        "hair-bearing scalp: 500 cm2 and 80 square inches in two rules of thumb of hair surgery, 775 cm2 in J. Soc. Cosmet. \
         Chem. 28(5) (1977); the middle is assumed";
    /// Density of keratin.
    KERATIN_DENSITY = "keratin-density", FromMemory,
        "textbooks of hair science: density of air-dry hair 1.32 (1.30 to 1.34) g/cm3";
    /// Follicles by age.
    FOLLICLES_BY_AGE = "follicles-by-age", Retrieved,
        "web page quoting histology: 615 follicles per cm2 in the third decade, 435 at 70 to 80 years; fine hairs included";
    /// Spread of the mass between people.
    MASS_SPREAD = "hair-mass-spread", Computed,
        "density and cross-section taken as independent: variation of the mass per area and length 0.34 between people, 80 \
         of 100 from 0.65 to 1.55 of the mean";
    /// Warmth of the scalp.
    WARM_BAND = "warm-band", Retrieved,
        "training unit on lightening that names the band warmed by the scalp (NZQA 2889, note 2); its length is assumed";
    /// Thickness and density of two regions.
    TEMPLE_AND_FRONT = "temple-and-front", Retrieved,
        "Skin Appendage Disord. 8(6):441 (2022), 90 Egyptian women: summed diameters per cm2 12 (2) mm frontal, 9 (2) mm \
         temporal; diameters 63 and 60 um";
    /// Density along the hairline.
    HAIRLINE_DENSITY = "hairline-density", Retrieved,
        "donor sites for hairline restoration, 101 Southeast Asian women: 135.2 hairs/cm2 at the midline of the hairline, \
         112.95 fronto-temporal, 69.82 at the temple peak";
    /// Thickness of a subsection.
    SUBSECTION = "subsection-thickness", Retrieved,
        "review questions of a training text, hair colour chapter: subsections of 1/8 inch for lightening, 1/4 inch for colour";
    /// Product against hair in a laboratory.
    LIQUOR_RATIO = "liquor-ratio", Retrieved,
        "J. Cosmet. Sci. 55(6):554 (2004), bleaching: 1 g of liquid on 1 g of hair, called typical of consumer use";
}
