/// An enum of words to choose from, declared with `choice!`.
pub trait Choice: Copy + Eq + 'static {
    /// What is chosen, for example `texture`.
    const WHAT: &'static str;
    /// Every variant, in the order of the documentation.
    const ALL: &'static [Self];
    /// The code of every variant, in the same order.
    const CODES: &'static [&'static str];

    /// The word of files, commands and plain data: kebab-case, unless a standard writes it otherwise.
    fn code(self) -> &'static str;

    /// The words that a person reads.
    fn words(self) -> &'static str;

    /// Words that are understood beside code and words.
    fn synonyms(self) -> &'static [&'static str] {
        &[]
    }

    /// The way out for a text that names no choice, where there is more to say than which choices there are.
    fn hint(_text: &str) -> Option<&'static str> {
        None
    }
}

/// Declares an enum of choices. A variant is `Name = "code"`, or `Name = "code" => "words"` where the words that a person
/// reads differ from the code; `| "word"` adds a word that is understood too. `hint path` after the variants names a
/// function for the way out of a text that names no choice ([`Choice::hint`]). Each variant needs a doc comment: it is the
/// description in the JSON Schema.
///
/// With `reading by hand;` in front there is no `FromStr`, for the few choices that people write in more ways than one.
///
/// ```text
/// choice! {
///     /// How thick the fibre is.
///     Texture: "texture" {
///         /// Below 60 um.
///         Fine = "fine",
///         /// Was straightened or permed.
///         Reformed = "straightened-or-permed" => "straightened or permed",
///     }
/// }
/// ```
macro_rules! choice {
    (@words $code:literal) => { $code };
    (@words $code:literal $words:literal) => { $words };
    (
        $(#[$doc:meta])*
        $name:ident: $what:literal { $($choices:tt)+ }
        $(hint $hint:path)?
    ) => {
        $crate::choice::choice! { reading by hand; $(#[$doc])* $name: $what { $($choices)+ } $(hint $hint)? }

        impl std::str::FromStr for $name {
            type Err = $crate::choice::UnknownChoice;

            /// Reads a code or its words, in any case.
            fn from_str(text: &str) -> Result<Self, Self::Err> {
                $crate::choice::parse(text)
            }
        }

        #[cfg(test)]
        #[test]
        #[allow(non_snake_case, reason = "a test beside each choice, under the name of the choice")]
        fn $name() {
            $crate::choice::agrees::agrees::<$name>();
        }
    };
    (
        reading by hand;
        $(#[$doc:meta])*
        $name:ident: $what:literal {
            $($(#[$vdoc:meta])* $variant:ident = $code:literal $(=> $words:literal)? $(| $also:literal)*,)+
        }
        $(hint $hint:path)?
    ) => {
        $(#[$doc])*
        #[derive(
            Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash,
            serde::Serialize, serde::Deserialize, schemars::JsonSchema,
        )]
        #[non_exhaustive]
        pub enum $name {
            $($(#[$vdoc])* #[serde(rename = $code)] $variant,)+
        }

        impl $name {
            /// Every choice, in the order of the documentation.
            pub const ALL: &'static [Self] = &[$(Self::$variant),+];

            /// The word of files, commands and plain data.
            #[must_use]
            pub const fn code(self) -> &'static str {
                match self { $(Self::$variant => $code,)+ }
            }

            /// The words that a person reads.
            #[must_use]
            pub const fn words(self) -> &'static str {
                match self { $(Self::$variant => $crate::choice::choice!(@words $code $($words)?),)+ }
            }
        }

        impl $crate::choice::Choice for $name {
            const WHAT: &'static str = $what;
            const ALL: &'static [Self] = $name::ALL;
            const CODES: &'static [&'static str] = &[$($code),+];

            fn code(self) -> &'static str {
                $name::code(self)
            }

            fn words(self) -> &'static str {
                $name::words(self)
            }

            fn synonyms(self) -> &'static [&'static str] {
                match self { $(Self::$variant => &[$($also),*],)+ }
            }

            $(
                fn hint(text: &str) -> Option<&'static str> {
                    $hint(text)
                }
            )?
        }

        impl std::fmt::Display for $name {
            fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
                f.pad(self.words())
            }
        }
    };
}

pub(crate) use choice;
