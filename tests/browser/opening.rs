//! What a person sees who opens the page and touches nothing.

use crate::page::on_our_page;

#[test]
fn the_page_answers_and_has_a_title() {
    on_our_page("", async |page| {
        let title = page.driver().title().await?;
        assert!(title.contains("Two Frames"), "the title is {title:?}");
        Ok(())
    });
}
