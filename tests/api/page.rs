//! Pages: what is written on them is a text, whoever wrote it.

use foilwork::page::{Html, Page};
use rstest::rstest;

#[rstest]
#[case::markup("<script>alert(1)</script>")]
#[case::attribute("\" onfocus=\"alert(1)\" autofocus=\"")]
#[case::closing("</style></title></main><img src=x onerror=alert(1)>")]
#[case::comment("<!-- --> <![CDATA[ ]]>")]
#[case::entity("&lt;b&gt; &#x3c;")]
#[case::turned("grey\u{202e}edit\u{2066}")]
#[case::control("\u{1b}]0;title\u{7}")]
fn a_text_is_never_more_than_a_text(#[case] text: &str) {
    let mut page = Page::new(text);
    let html = page.body();
    html.open("section", &[("class", text)]);
    html.element("h1", &[("title", text)], text);
    html.marked("p", &[], text, text);
    html.list(text, [text.to_owned()]);
    html.table(text, &[text], &[], &[vec![text.to_owned(), text.to_owned()]]);
    html.close("section");
    let page = page.finish();
    for never in ["<script", "<img", "onfocus=\"", "<!--", "\u{202e}", "\u{2066}", "\u{1b}", "\u{7}", "& ", "&lt;b&gt;"]
    {
        assert!(!page.contains(never), "{never:?} in {page}");
    }
    assert_eq!(page.matches("</main>").count(), 1);
}

#[test]
fn nothing_runs_but_what_the_policy_names() {
    let page = Page::new("t").finish();
    assert!(page.contains("default-src 'none'; style-src 'sha256-") && !page.contains("script-src"));
    let page = Page::new("t").with_script().finish();
    assert!(page.contains("script-src 'sha256-") && page.contains("form-action 'none'"));
    for never in ["http:", "https:", "url(", "@import", "unsafe", "src=", "style=\""] {
        assert!(!page.contains(never), "{never}");
    }
}

#[test]
fn a_table_names_its_rows_and_columns() {
    let mut html = Html::default();
    html.table("bowls", &["what", "g"], &[1], &[vec!["powder".to_owned(), "15".to_owned()]]);
    let text = html.finish();
    assert!(text.contains("<caption>bowls</caption>") && text.contains("<th scope=\"col\" class=\"number\">g</th>"));
    assert!(text.contains("<th scope=\"row\" class=\"words\" dir=\"auto\">powder</th>"));
    assert!(text.contains("<td class=\"number\" dir=\"auto\">15</td>"));
}
