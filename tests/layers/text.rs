//! Rust source as words: comments, texts and tests taken out, lines kept.

/// A word or a sign of the source, with its line, counted from 1.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Token {
    pub(crate) word: String,
    pub(crate) line: usize,
}

/// The source with comments and the insides of texts blanked, line by line as it was.
pub(crate) fn code(source: &str) -> String {
    let letters: Vec<char> = source.chars().collect();
    let mut out = String::with_capacity(source.len());
    let mut at = 0;
    while at < letters.len() {
        let end = at
            + skipped(
                &letters[at..],
                at.checked_sub(1).map(|before| letters[before]),
            );
        if end == at {
            out.push(letters[at]);
            at += 1;
        }
        while at < end {
            out.push(if letters[at] == '\n' { '\n' } else { ' ' });
            at += 1;
        }
    }
    out
}

/// How many letters from here on are a comment, a text or a letter in quotes; 0 where code begins.
fn skipped(rest: &[char], before: Option<char>) -> usize {
    let in_word = before.is_some_and(is_of_word);
    match rest {
        ['/', '/', ..] => rest
            .iter()
            .position(|letter| *letter == '\n')
            .unwrap_or(rest.len()),
        ['/', '*', ..] => block_comment(rest),
        ['"', ..] => text(rest, 1, 0),
        ['r', '"' | '#', ..] if !in_word => raw_text(rest, 1),
        ['b', '"', ..] if !in_word => text(rest, 2, 0),
        ['b', 'r', '"' | '#', ..] if !in_word => raw_text(rest, 2),
        ['\'', '\\', ..] => {
            3 + rest[3..]
                .iter()
                .position(|letter| *letter == '\'')
                .map_or(0, |end| end + 1)
        }
        ['\'', _, '\'', ..] => 3,
        _ => 0,
    }
}

fn block_comment(rest: &[char]) -> usize {
    let (mut depth, mut at) = (0, 0);
    while at < rest.len() {
        match rest[at..] {
            ['/', '*', ..] => (depth, at) = (depth + 1, at + 2),
            ['*', '/', ..] => (depth, at) = (depth - 1, at + 2),
            _ => at += 1,
        }
        if depth == 0 {
            break;
        }
    }
    at
}

/// A text that starts `start` letters in and ends at a quotation mark with so many hashes; backslashes count in a text
/// without hashes only.
fn text(rest: &[char], start: usize, hashes: usize) -> usize {
    let mut at = start;
    while at < rest.len() {
        match rest[at] {
            '\\' if hashes == 0 => at += 1,
            '"' if rest[at + 1..]
                .iter()
                .take_while(|letter| **letter == '#')
                .count()
                >= hashes =>
            {
                return at + 1 + hashes;
            }
            _ => {}
        }
        at += 1;
    }
    rest.len()
}

/// A raw text, or 0 where the letters are a raw name such as `r#type`.
fn raw_text(rest: &[char], start: usize) -> usize {
    let hashes = rest[start..]
        .iter()
        .take_while(|letter| **letter == '#')
        .count();
    if rest.get(start + hashes) != Some(&'"') {
        return 0;
    }
    if hashes > 0 {
        return text(rest, start + hashes + 1, hashes);
    }
    let end = rest[start + 1..].iter().position(|letter| *letter == '"');
    end.map_or(rest.len(), |end| start + end + 2)
}

/// Code with everything that is compiled for tests only blanked.
pub(crate) fn without_tests(code: &str) -> String {
    const MARK: &str = "#[cfg(test)]";
    let mut out = code.to_owned();
    while let Some(start) = out.find(MARK) {
        let end = item_end(&out, start);
        let blank: String = out[start..end]
            .chars()
            .map(|letter| if letter == '\n' { '\n' } else { ' ' })
            .collect();
        out.replace_range(start..end, &blank);
    }
    out
}

/// Where the item from `start` on ends: at its closing brace, or at a semicolon before any brace.
fn item_end(code: &str, start: usize) -> usize {
    let mut depth = 0;
    for (at, letter) in code[start..].char_indices() {
        match letter {
            '{' => depth += 1,
            '}' if depth == 1 => return start + at + 1,
            '}' => depth -= 1,
            ';' if depth == 0 => return start + at + 1,
            _ => {}
        }
    }
    code.len()
}

fn is_of_word(letter: char) -> bool {
    letter.is_alphanumeric() || letter == '_'
}

/// Names and numbers as they are, `::` as one sign, every other sign by itself.
pub(crate) fn tokens(code: &str) -> Vec<Token> {
    let mut tokens = Vec::new();
    for (line, text) in code.lines().enumerate() {
        let letters: Vec<char> = text.chars().collect();
        let mut at = 0;
        while at < letters.len() {
            let length = match &letters[at..] {
                [':', ':', ..] => 2,
                [letter, ..] if is_of_word(*letter) => letters[at..]
                    .iter()
                    .take_while(|letter| is_of_word(**letter))
                    .count(),
                _ => 1,
            };
            let word: String = letters[at..at + length].iter().collect();
            if !word.trim().is_empty() {
                tokens.push(Token {
                    word,
                    line: line + 1,
                });
            }
            at += length;
        }
    }
    tokens
}

/// The index of the sign that closes the one at `open`; the end where nothing does.
pub(crate) fn closing(tokens: &[Token], open: usize) -> usize {
    let mut depth = 0;
    for (at, token) in tokens.iter().enumerate().skip(open) {
        match &*token.word {
            "(" | "[" | "{" => depth += 1,
            ")" | "]" | "}" => depth -= 1,
            _ => {}
        }
        if depth == 0 {
            return at;
        }
    }
    tokens.len().saturating_sub(1)
}

fn words(source: &str) -> Vec<String> {
    tokens(&without_tests(&code(source)))
        .into_iter()
        .map(|token| token.word)
        .collect()
}

#[test]
fn comments_and_texts_are_no_code() {
    assert_eq!(words("a // b\n/* c /* d */ e */ f"), ["a", "f"]);
    assert_eq!(
        words(r#"a("x \" y", 'q', '\'', '\u{1F}') b"#).join(" "),
        "a ( , , , ) b"
    );
    assert_eq!(
        words("f(r\"\\\", r#\"in \" side\"#, br\"z\") g").join(" "),
        "f ( , , ) g"
    );
    assert_eq!(
        words("fn f<'a>(x: &'a str) -> &'a r#type").join(" "),
        "fn f < ' a > ( x : & ' a str ) - > & ' a r # type"
    );
    assert_eq!(words("crate::x").join(" "), "crate :: x");
}

#[test]
fn tests_are_left_out_and_lines_stay() {
    let source = "a\n#[cfg(test)]\nmod tests {\n  use x; { y }\n}\nb\n#[cfg(test)]\nuse z;\nc";
    let tokens = tokens(&without_tests(&code(source)));
    let found: Vec<_> = tokens
        .iter()
        .map(|token| (&*token.word, token.line))
        .collect();
    assert_eq!(found, [("a", 1), ("b", 6), ("c", 9)]);
}
