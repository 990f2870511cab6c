//! The web server, asked over a real connection.

mod support;

use std::fs;
use std::io::{self, Read as _, Write as _};
use std::net::TcpStream;

use support::TemporaryFolder;
use two_frames::cli::Server;

const PAGE: &str = "<!doctype html><title>A small page</title>";

/// A small site, served.
struct Site {
    server: Server,
    folder: TemporaryFolder,
}

impl Site {
    fn new() -> Self {
        let folder = TemporaryFolder::new("server");
        let write = |name: &str, bytes: &[u8]| {
            fs::write(folder.path().join(name), bytes).expect("a file can be written");
        };
        write("index.html", PAGE.as_bytes());
        write("core.wasm", &vec![0; 100_000]);
        fs::create_dir(folder.path().join("lessons")).expect("a folder can be made");
        write("lessons/index.html", b"lessons");
        Self {
            server: Server::start(folder.path(), 0).expect("a free port"),
            folder,
        }
    }

    /// Host and port, as a request names them.
    fn host(&self) -> String {
        let address = self.server.address();
        address
            .trim_start_matches("http://")
            .trim_end_matches('/')
            .to_owned()
    }

    fn ask(&self, method: &str, path: &str) -> Reply {
        Reply::read(&self.host(), method, path).expect("the server answers")
    }
}

/// What came back.
struct Reply {
    head: String,
    body: Vec<u8>,
}

impl Reply {
    fn read(host: &str, method: &str, path: &str) -> io::Result<Self> {
        let mut stream = TcpStream::connect(host)?;
        write!(
            stream,
            "{method} {path} HTTP/1.1\r\nHost: {host}\r\nConnection: close\r\n\r\n"
        )?;
        let mut bytes = Vec::new();
        stream.read_to_end(&mut bytes)?;
        let end = bytes
            .windows(4)
            .position(|four| four == b"\r\n\r\n")
            .ok_or(io::ErrorKind::InvalidData)?;
        let head = String::from_utf8_lossy(&bytes[..end]).into_owned();
        Ok(Self {
            head,
            body: bytes.split_off(end + 4),
        })
    }

    fn status(&self) -> u16 {
        let code = self
            .head
            .split(' ')
            .nth(1)
            .and_then(|code| code.parse().ok());
        code.unwrap_or_else(|| panic!("no status in {}", self.head))
    }

    fn header(&self, name: &str) -> Option<&str> {
        let fields = self.head.lines().filter_map(|line| line.split_once(": "));
        fields
            .into_iter()
            .find(|(field, _)| field.eq_ignore_ascii_case(name))
            .map(|(_, value)| value)
    }

    fn text(&self) -> &str {
        std::str::from_utf8(&self.body).expect("a text")
    }
}

#[test]
fn the_address_answers_with_the_page() {
    let reply = Site::new().ask("GET", "/");
    assert_eq!((reply.status(), reply.text()), (200, PAGE));
    assert_eq!(
        reply.header("Content-Type"),
        Some("text/html; charset=utf-8")
    );
    assert_eq!(reply.header("Cache-Control"), Some("no-cache"));
}

#[test]
fn the_core_arrives_whole_and_as_webassembly() {
    let reply = Site::new().ask("GET", "/core.wasm");
    assert_eq!((reply.status(), reply.body.len()), (200, 100_000));
    assert_eq!(reply.header("Content-Type"), Some("application/wasm"));
    assert_eq!(reply.header("Content-Length"), Some("100000"));
}

/// Source: RFC 9110 section 9.3.2 (from memory): HEAD is GET without the body.
#[test]
fn head_tells_the_same_as_get_without_the_body() {
    let reply = Site::new().ask("HEAD", "/core.wasm");
    assert_eq!((reply.status(), reply.body.len()), (200, 0));
    assert_eq!(reply.header("Content-Length"), Some("100000"));
}

#[test]
fn what_is_not_there_is_said_in_one_sentence() {
    let site = Site::new();
    for path in [
        "/nothing.html",
        "/../Cargo.toml",
        "/..%2fCargo.toml",
        "/lessons/../../Cargo.toml",
        "//",
    ] {
        let reply = site.ask("GET", path);
        assert_eq!(reply.status(), 404, "{path}");
        assert!(
            reply.text().ends_with('.') && reply.text().lines().count() == 1,
            "{}",
            reply.text()
        );
    }
}

/// Source: RFC 9110 section 15.5.6 (from memory): 405 names the methods that are allowed.
#[test]
fn writing_is_refused() {
    let reply = Site::new().ask("POST", "/");
    assert_eq!(
        (reply.status(), reply.header("Allow")),
        (405, Some("GET, HEAD"))
    );
}

#[test]
fn a_folder_without_its_slash_leads_on() {
    let site = Site::new();
    let reply = site.ask("GET", "/lessons");
    assert_eq!(
        (reply.status(), reply.header("Location")),
        (301, Some("/lessons/"))
    );
    assert_eq!(site.ask("GET", "/lessons/").text(), "lessons");
}

#[test]
fn a_visitor_who_says_nothing_keeps_nobody_waiting() {
    let site = Site::new();
    let silent: Vec<_> = (0..20)
        .map(|_| TcpStream::connect(site.host()).expect("a connection"))
        .collect();
    assert_eq!(site.ask("GET", "/").status(), 200);
    drop(silent);
}

#[test]
fn it_stops_when_it_is_dropped() {
    let site = Site::new();
    let host = site.host();
    assert_eq!(site.ask("GET", "/").status(), 200);
    drop(site);
    assert!(TcpStream::connect(host).is_err(), "the port is still open");
}

#[test]
fn a_port_is_given_to_one_server_only() {
    let site = Site::new();
    let port = site
        .host()
        .rsplit_once(':')
        .expect("host and port")
        .1
        .parse()
        .expect("a number");
    let second = Server::start(site.folder.path(), port);
    assert_eq!(
        second.map(drop).expect_err("the port is taken").kind(),
        io::ErrorKind::AddrInUse
    );
}
