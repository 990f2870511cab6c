//! What the server answers to a request, decided from its method and path alone.

use std::fs;
use std::path::{Component, Path, PathBuf};

use hyper::Method;

/// An answer before it is sent.
#[derive(Debug, PartialEq, Eq)]
pub(crate) enum Answer {
    /// The file's bytes.
    File(PathBuf),
    /// A folder's name lacks its last slash: look there instead.
    Moved(String),
    /// Nothing of that name.
    NotFound,
    /// Neither GET nor HEAD.
    NotAllowed,
}

impl Answer {
    /// Answers a request for `path` from the files below `root`, which must be a canonical path.
    pub(crate) fn to(method: &Method, path: &str, root: &Path) -> Self {
        if method != Method::GET && method != Method::HEAD {
            return Self::NotAllowed;
        }
        match find(path, root) {
            Some(found) if found.is_file() => Self::File(found),
            Some(_) => Self::Moved(format!("{path}/")),
            None => Self::NotFound,
        }
    }
}

/// The file or folder that `path` names, if there is one and it lies below `root`. The site's own names are plain
/// ASCII, so nothing is percent-decoded.
fn find(path: &str, root: &Path) -> Option<PathBuf> {
    let path = path.strip_prefix('/')?;
    if !Path::new(path).components().all(is_plain) {
        return None;
    }
    let mut wanted = root.join(path);
    if path.is_empty() || path.ends_with('/') {
        wanted.push("index.html");
    }
    let found = fs::canonicalize(wanted).ok()?;
    found.starts_with(root).then_some(found)
}

/// No way up, no other disk, no hidden file.
fn is_plain(part: Component<'_>) -> bool {
    matches!(part, Component::Normal(name) if !name.to_string_lossy().starts_with('.'))
}

/// The media type of a file, from its name.
pub(crate) fn media_type(file: &Path) -> String {
    let guess = mime_guess::from_path(file).first_or_octet_stream();
    let text = guess.type_() == "text" || guess.subtype() == "json";
    if text {
        format!("{guess}; charset=utf-8")
    } else {
        guess.to_string()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A folder with a small site in it and a secret beside it, removed at the end.
    struct Site(PathBuf);

    impl Site {
        fn new(name: &str) -> Self {
            let folder = std::env::temp_dir()
                .join(format!("two-frames-answer-{name}-{}", std::process::id()));
            fs::create_dir_all(folder.join("www/lessons")).expect("a temporary folder");
            for file in [
                "secret.txt",
                "www/index.html",
                "www/.gitignore",
                "www/lessons/index.html",
            ] {
                fs::write(folder.join(file), file).expect("a temporary file");
            }
            Self(fs::canonicalize(folder).expect("the folder is there"))
        }

        fn get(&self, path: &str) -> Answer {
            Answer::to(&Method::GET, path, &self.0.join("www"))
        }

        fn file(&self, name: &str) -> Answer {
            Answer::File(self.0.join("www").join(name))
        }
    }

    impl Drop for Site {
        fn drop(&mut self) {
            let _ = fs::remove_dir_all(&self.0);
        }
    }

    #[test]
    fn a_folder_answers_with_its_index() {
        let site = Site::new("index");
        assert_eq!(site.get("/"), site.file("index.html"));
        assert_eq!(site.get("/lessons/"), site.file("lessons/index.html"));
        assert_eq!(site.get("/lessons"), Answer::Moved("/lessons/".to_owned()));
    }

    #[test]
    fn nothing_outside_the_folder_is_reached() {
        let site = Site::new("outside");
        for path in [
            "/../secret.txt",
            "/lessons/../../secret.txt",
            "/..%2fsecret.txt",
            "/%2e%2e/secret.txt",
            "//etc/passwd",
        ] {
            assert_eq!(site.get(path), Answer::NotFound, "{path}");
        }
        assert_eq!(site.get("/.gitignore"), Answer::NotFound);
        assert_eq!(site.get("secret.txt"), Answer::NotFound);
    }

    #[test]
    #[cfg(unix)]
    fn a_link_that_leads_outside_is_not_followed() {
        let site = Site::new("link");
        std::os::unix::fs::symlink(site.0.join("secret.txt"), site.0.join("www/way-out.txt"))
            .expect("a link");
        assert_eq!(site.get("/way-out.txt"), Answer::NotFound);
    }

    #[test]
    fn only_reading_is_allowed() {
        let site = Site::new("methods");
        let root = site.0.join("www");
        assert_eq!(
            Answer::to(&Method::HEAD, "/", &root),
            site.file("index.html")
        );
        for method in [Method::POST, Method::PUT, Method::DELETE, Method::OPTIONS] {
            assert_eq!(
                Answer::to(&method, "/", &root),
                Answer::NotAllowed,
                "{method}"
            );
        }
    }

    /// Source: the WHATWG MIME sniffing and WebAssembly web API standards for text/javascript and application/wasm,
    /// SVG 2 for image/svg+xml (from memory).
    #[test]
    fn media_types_are_those_that_browsers_insist_on() {
        let cases = [
            ("a.html", "text/html; charset=utf-8"),
            ("a.js", "text/javascript; charset=utf-8"),
            ("a.css", "text/css; charset=utf-8"),
            ("a.wasm", "application/wasm"),
            ("a.svg", "image/svg+xml"),
            ("a.json", "application/json; charset=utf-8"),
            ("a.png", "image/png"),
            ("a.unheard-of", "application/octet-stream"),
        ];
        for (file, expected) in cases {
            assert_eq!(media_type(Path::new(file)), expected, "{file}");
        }
    }
}
