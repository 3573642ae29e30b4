"""A check that comes by a link: cold, into the running app, wrong, and only once."""

from tests.phone import Phone

FULL = (
    "#/check?go=0.010in%2B0.001in&no-go=0.013in&gasket=0.040in&wire=0.041in"
    "&groove-width=0.040in&groove-depth=0.030in&shelf=0.032in,0.050in&share=20%25"
)
NO_LINK = "() => !location.hash.includes('check')"


def follow(phone: Phone, link: str) -> None:
    phone.page.evaluate("(link) => { location.hash = link }", link)


def test_a_link_opened_cold_is_used_once_and_a_reload_shows_the_draft(phone: Phone) -> None:
    page = phone.open(FULL)
    phone.read_aloud()
    assert phone.phrase("height", holding="0.0121 inch")
    assert "0.010 in + 0.001 in" in phone.phrase("in-go")
    assert "limit 20 %" in phone.phrase("verdict-height-to-gasket")
    assert "0.0500 inch: fail, BORDERLINE, 24 %" in phone.phrase("strip")
    page.wait_for_function(NO_LINK)
    phone.tap("leaf-0.0120")
    assert phone.phrase("height", holding="0.0125 inch")
    page.reload()
    phone.read_aloud()
    assert phone.phrase("height", holding="0.0125 inch")
    assert page.evaluate("() => !window.nodeOf('link-preview')")

    # into the running app, over an entry under way: nothing changes before a word
    follow(phone, "#/check?go=0.009in&no-go=0.010in")
    assert "9 goes, 10 does not" in phone.phrase("link-preview")
    assert phone.phrase("height", holding="0.0125 inch")
    phone.tap("keep-mine")
    page.wait_for_function(f"() => !window.nodeOf('link-preview') && ({NO_LINK})()")
    assert phone.phrase("height", holding="0.0125 inch")

    # the same link again is a link again
    follow(phone, "#/check?go=0.009in&no-go=0.010in")
    phone.phrase("link-preview")
    phone.tap("use-link")
    assert phone.phrase("height", holding="0.0095 inch")
    page.wait_for_function(NO_LINK)

    # a bad one names what is wrong and changes nothing
    follow(phone, "#/check?go=0.012in&wire=12kg")
    assert "Wire" in phone.phrase("link-trouble", holding="not used")
    assert phone.phrase("height", holding="0.0095 inch")
    phone.tap("close-link")
    page.wait_for_function(f"() => !window.nodeOf('link-trouble') && ({NO_LINK})()")

    # and the way back opens none of them again
    page.evaluate("() => history.back()")
    page.wait_for_timeout(500)
    assert page.evaluate("() => !window.nodeOf('link-preview')")
