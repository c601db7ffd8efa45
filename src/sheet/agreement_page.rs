use super::{
    sign::{not_yet, settle_first, to_sign},
    writing::Writing,
};
use crate::{
    page::{Html, Page},
    service::{AgreedPrice, ConsultationPlan, Go, NOT_YET, guest_words},
};

/// What is agreed, on a page for the guest to read and to sign: plan, visits, what is not promised, risks, price from-to.
///
/// It holds no grams and no cost of the salon. While a check says stop, or something has to be settled first, there is no price on
/// it and no line to sign. It never says that anything is safe.
///
/// # Example
///
/// ```
/// use foilwork::{reader::Format, service::{Evidence, consult, parse}, sheet::agreement_page};
///
/// let file = parse(&std::fs::read_to_string("examples/soft-gradient.toml")?, Format::Toml)?;
/// let page = agreement_page(&consult(&file, &Evidence::default())?);
/// assert!(page.contains("What we do not promise") && page.contains("Guest"));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn agreement_page(found: &ConsultationPlan) -> String {
    let agreed = &found.agreement;
    let writing = Writing::of(found.habits);
    let mut page = Page::new(&format!("Agreement: {}", found.title));
    let html = page.body();
    html.element("h1", &[("dir", "auto")], &found.title);
    html.element("p", &[], &writing.start(found.start));
    if let Some(guest) = &found.guest {
        html.marked("p", &[("dir", "auto")], "for", guest);
    }
    if !agreed.may_be_signed {
        if found.decision.go == Go::Stop {
            not_yet(html, &[]);
        } else {
            settle_first(html);
        }
    }
    said(html, "What we plan", &agreed.planned);
    said(html, "Visits", &agreed.visits);
    said(html, "What we do not promise", &agreed.not_promised);
    let warned =
        agreed.warned.iter().filter_map(|rule| guest_words::told(*rule)).map(str::to_owned).collect::<Vec<_>>();
    said(html, "What you should know", &warned);
    let open = guest_words::names(agreed.open.iter().copied());
    if !open.is_empty() {
        html.marked("p", &[], "Not yet settled:", &format!("{}; ask your colourist.", open.join(", ")));
    }
    said(html, "What may go wrong", &agreed.risks);
    // That it cannot begin stands above already.
    let before: Vec<String> = agreed.before.iter().filter(|said| *said != NOT_YET).cloned().collect();
    said(html, "Before we begin", &before);
    if agreed.may_be_signed {
        if let Some(price) = &agreed.price {
            html.element("h2", &[], "Price");
            html.element("p", &[], &price_in_words(price, writing));
        }
        to_sign(html);
    }
    page.finish()
}

fn said(html: &mut Html, heading: &str, said: &[String]) {
    if !said.is_empty() {
        html.element("h2", &[], heading);
        html.list("", said.iter().cloned());
    }
}

/// The price from-to, with what it counts.
pub(super) fn price_in_words(price: &AgreedPrice, writing: Writing) -> String {
    let tax = if price.tax_included { "tax included" } else { "before tax" };
    let one = if price.low == price.high {
        format!("{} for this visit", writing.money(price.planned))
    } else {
        format!(
            "{} to {} for this visit, {} as planned",
            writing.money(price.low),
            writing.money(price.high),
            writing.money(price.planned)
        )
    };
    let all = match price.visits {
        1 => String::new(),
        visits => format!(
            "; {visits} visits like this one would come to up to {}, and more may be needed",
            writing.money(price.all_visits_high)
        ),
    };
    let open = match price.left_out.as_slice() {
        [] => "More product, more time or a second application cost more: we ask before.",
        _ => "The price is not whole yet: something in it is not known.",
    };
    format!("{one}{all}, {tax}. {open}")
}
