/// Declares the Python class of a result: frozen, one attribute for each field, a `repr` that shows them all.
macro_rules! answer {
    (
        $(#[$doc:meta])*
        $name:ident { $($(#[$field_doc:meta])* $field:ident: $kind:ty),+ $(,)? }
    ) => {
        $(#[$doc])*
        #[pyo3::pyclass(frozen, get_all, eq, module = "foilwork.money")]
        #[derive(Clone, PartialEq)]
        pub struct $name { $($(#[$field_doc])* pub $field: $kind),+ }

        #[pyo3::pymethods]
        impl $name {
            pub fn __repr__(&self) -> String {
                let fields = [$(format!("{}={}", stringify!($field), $crate::money::answer::Show(&self.$field))),+];
                format!("{}({})", stringify!($name), fields.join(", "))
            }
        }
    };
}
pub(super) use answer;

/// Shows a field as Python would.
pub struct Show<'a, T>(pub &'a T);

macro_rules! show {
    ($($kind:ty: |$value:ident| $text:expr),+ $(,)?) => {
        $(impl std::fmt::Display for Show<'_, $kind> {
            fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
                let $value = self.0;
                f.write_str(&$text)
            }
        })+
    };
}

show! {
    super::PyMoney: |money| money.__repr__(),
    rust_decimal::Decimal: |value| format!("Decimal('{value}')"),
    String: |text| format!("{text:?}"),
    bool: |flag| if *flag { "True".to_owned() } else { "False".to_owned() },
    i64: |count| count.to_string(),
    usize: |count| count.to_string(),
    super::TaxedPrice: |price| price.__repr__(),
    super::SetPrice: |price| price.__repr__(),
    super::ServicePrice: |price| price.__repr__(),
    super::SalesMixLine: |line| line.__repr__(),
    super::QuoteDriver: |driver| driver.__repr__(),
}

impl<T> std::fmt::Display for Show<'_, Option<T>>
where
    for<'a> Show<'a, T>: std::fmt::Display,
{
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self.0 {
            Some(value) => Show(value).fmt(f),
            None => f.write_str("None"),
        }
    }
}

impl<T> std::fmt::Display for Show<'_, Vec<T>>
where
    for<'a> Show<'a, T>: std::fmt::Display,
{
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let items: Vec<_> = self.0.iter().map(|item| Show(item).to_string()).collect();
        write!(f, "[{}]", items.join(", "))
    }
}
