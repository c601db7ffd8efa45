use crate::answer::answer;

answer! {
    in "foilwork.chart";
    /// A picture as SVG; a notebook shows it. What it shows stands in it as words too.
    Picture {
        /// The text of the picture: nothing in it runs, and nothing is loaded.
        svg: String,
    }
    impl {
        fn __str__(&self) -> String {
            self.svg.clone()
        }

        fn _repr_svg_(&self) -> String {
            self.svg.clone()
        }
    }
}
