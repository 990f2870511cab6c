//! A chromedriver of our own: started on a free port, stopped with its browsers when it is dropped.

use std::env;
use std::io::{BufRead, BufReader, Read as _, Write as _};
use std::net::{Ipv4Addr, TcpStream};
use std::process::{Child, ChildStdout, Command, Stdio};
use std::thread;
use std::time::{Duration, Instant};

use thirtyfour::{
    ChromeCapabilities, ChromiumLikeCapabilities as _, LoggingPrefsLogLevel, prelude::*,
};

use crate::support::TemporaryFolder;

/// How Chromium is started: without a screen, and without its own errands on the network.
const FLAGS: [&str; 8] = [
    "--headless",
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
];

/// A running chromedriver.
pub(crate) struct Chromedriver {
    process: Child,
    port: u16,
    profile: TemporaryFolder,
    /// Kept open, so that chromedriver can go on writing.
    _output: BufReader<ChildStdout>,
}

impl Chromedriver {
    /// Starts `chromedriver` (or the program that the variable CHROMEDRIVER names) and waits until it listens.
    pub(crate) fn start() -> Self {
        let program = env::var_os("CHROMEDRIVER").unwrap_or_else(|| "chromedriver".into());
        let mut process = Command::new(program)
            .arg("--port=0")
            .stdin(Stdio::null())
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn()
            .expect("chromedriver starts: install chromium-driver, or run tests/all, which does");
        let mut output = BufReader::new(process.stdout.take().expect("its output is piped"));
        let port = announced_port(&mut output);
        Self {
            process,
            port,
            profile: TemporaryFolder::new("profile"),
            _output: output,
        }
    }

    /// Opens a browser window with a profile of its own.
    pub(crate) async fn open(&self) -> WebDriverResult<WebDriver> {
        let mut wanted = ChromeCapabilities::new();
        for flag in FLAGS {
            wanted.add_arg(flag)?;
        }
        wanted.add_arg(&format!(
            "--user-data-dir={}",
            self.profile.path().display()
        ))?;
        wanted.set_browser_log_level(LoggingPrefsLogLevel::All)?;
        WebDriver::new(format!("http://127.0.0.1:{}", self.port), wanted).await
    }

    /// Asks chromedriver to close its browsers and end.
    fn ask_to_stop(&self) -> std::io::Result<()> {
        let mut stream = TcpStream::connect((Ipv4Addr::LOCALHOST, self.port))?;
        stream.set_read_timeout(Some(Duration::from_secs(5)))?;
        write!(
            stream,
            "GET /shutdown HTTP/1.1\r\nHost: 127.0.0.1:{}\r\nConnection: close\r\n\r\n",
            self.port
        )?;
        stream.read_to_end(&mut Vec::new()).map(drop)
    }

    fn has_ended_within(&mut self, limit: Duration) -> bool {
        let end = Instant::now() + limit;
        while Instant::now() < end {
            if matches!(self.process.try_wait(), Ok(Some(_))) {
                return true;
            }
            thread::sleep(Duration::from_millis(10));
        }
        false
    }
}

impl Drop for Chromedriver {
    fn drop(&mut self) {
        // Killing it at once would leave its browsers behind; that is the last resort.
        let _ = self.ask_to_stop();
        if !self.has_ended_within(Duration::from_secs(5)) {
            let _ = self.process.kill();
            let _ = self.process.wait();
        }
    }
}

/// Reads until the line that ends in "started successfully on port N."
fn announced_port(output: &mut impl BufRead) -> u16 {
    let mut lines = output.lines().map_while(Result::ok);
    let port = lines.find_map(|line| {
        line.rsplit_once("successfully on port ")?
            .1
            .trim_end_matches('.')
            .parse()
            .ok()
    });
    port.expect("chromedriver tells its port: run it by hand to see why it does not")
}
