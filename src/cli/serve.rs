//! The web server: the files of one folder, on this computer only.

use std::convert::Infallible;
use std::fs;
use std::io::{self, ErrorKind};
use std::net::{Ipv4Addr, TcpListener};
use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::thread::{self, JoinHandle};
use std::time::Duration;

use http_body_util::Full;
use hyper::body::{Bytes, Incoming};
use hyper::header::{
    ALLOW, CACHE_CONTROL, CONTENT_TYPE, HeaderName, LOCATION, X_CONTENT_TYPE_OPTIONS,
};
use hyper::server::conn::http1;
use hyper::service::service_fn;
use hyper::{Request, Response, StatusCode};
use hyper_util::rt::TokioIo;
use tokio::sync::oneshot;

use super::answer::{Answer, media_type};
use super::output::print;
use super::{Failure, Project, ServeArguments};

/// Builds the core and serves the page until the command is stopped.
pub(crate) fn run(project: &Project, arguments: ServeArguments) -> Result<(), Failure> {
    let listener = listen(arguments.port).map_err(|error| why_not(arguments.port, error))?;
    project.build_core()?;
    let page = project.page();
    let server = Server::on(listener, &page).map_err(Failure::file("serve", &page))?;
    // It serves also where nobody reads the address.
    let _ = print(&format!(
        "Two Frames is at {} (Ctrl+C stops it)\n",
        server.address()
    ));
    server.wait();
    Ok(())
}

fn listen(port: u16) -> io::Result<TcpListener> {
    TcpListener::bind((Ipv4Addr::LOCALHOST, port))
}

fn why_not(port: u16, error: io::Error) -> Failure {
    match error.kind() {
        ErrorKind::AddrInUse => Failure::PortTaken(port),
        _ => Failure::PortRefused(port, error),
    }
}

/// A running web server for the files of one folder. It stops when it is dropped.
#[must_use = "the server stops when it is dropped"]
#[derive(Debug)]
pub struct Server {
    port: u16,
    /// Dropping this stops the thread.
    stop: Option<oneshot::Sender<Infallible>>,
    thread: Option<JoinHandle<()>>,
}

impl Server {
    /// Serves the folder `root` on 127.0.0.1; port 0 takes any free one.
    pub fn start(root: &Path, port: u16) -> io::Result<Self> {
        Self::on(listen(port)?, root)
    }

    fn on(listener: TcpListener, root: &Path) -> io::Result<Self> {
        let port = listener.local_addr()?.port();
        let root = Arc::new(fs::canonicalize(root)?);
        listener.set_nonblocking(true)?;
        // One thread serves any number of connections, so one that stays silent keeps nobody waiting.
        let runtime = tokio::runtime::Builder::new_current_thread()
            .enable_all()
            .build()?;
        let (stop, stopped) = oneshot::channel();
        let thread = thread::spawn(move || {
            runtime.block_on(async {
                tokio::spawn(accept(listener, root));
                let _ = stopped.await;
            });
        });
        Ok(Self {
            port,
            stop: Some(stop),
            thread: Some(thread),
        })
    }

    /// The address of the page, as in `http://127.0.0.1:8000/`.
    pub fn address(&self) -> String {
        format!("http://127.0.0.1:{}/", self.port)
    }

    /// Waits for ever.
    fn wait(mut self) {
        self.join();
    }

    fn join(&mut self) {
        if let Some(thread) = self.thread.take() {
            // Had it panicked, it would have printed its reason.
            let _ = thread.join();
        }
    }
}

impl Drop for Server {
    fn drop(&mut self) {
        drop(self.stop.take());
        self.join();
    }
}

async fn accept(listener: TcpListener, root: Arc<PathBuf>) {
    let listener = tokio::net::TcpListener::from_std(listener)
        .expect("the runtime takes a listener that is open");
    loop {
        let Ok((stream, _)) = listener.accept().await else {
            // Too many open files, or a visitor who left at once: others may still come.
            tokio::time::sleep(Duration::from_millis(50)).await;
            continue;
        };
        let root = Arc::clone(&root);
        let service = service_fn(move |request| {
            let reply = reply(&request, &root);
            async { Ok::<_, Infallible>(reply) }
        });
        // A connection that fails is the other side's loss.
        tokio::spawn(http1::Builder::new().serve_connection(TokioIo::new(stream), service));
    }
}

/// The whole answer to one request. It reads the file at once: the site's files are small and lie on this computer.
fn reply(request: &Request<Incoming>, root: &Path) -> Response<Full<Bytes>> {
    match Answer::to(request.method(), request.uri().path(), root) {
        Answer::File(path) => match fs::read(&path) {
            Ok(bytes) => respond(StatusCode::OK, CONTENT_TYPE, &media_type(&path), bytes),
            Err(_) => missing(),
        },
        Answer::Moved(to) => respond(StatusCode::MOVED_PERMANENTLY, LOCATION, &to, Vec::new()),
        Answer::NotFound => missing(),
        Answer::NotAllowed => respond(
            StatusCode::METHOD_NOT_ALLOWED,
            ALLOW,
            "GET, HEAD",
            Vec::new(),
        ),
    }
}

fn missing() -> Response<Full<Bytes>> {
    let sentence = "There is no such page here: go back to the start at /.";
    respond(
        StatusCode::NOT_FOUND,
        CONTENT_TYPE,
        "text/plain; charset=utf-8",
        sentence.into(),
    )
}

fn respond(
    status: StatusCode,
    name: HeaderName,
    value: &str,
    body: Vec<u8>,
) -> Response<Full<Bytes>> {
    let response = Response::builder()
        .status(status)
        .header(name, value)
        .header(CACHE_CONTROL, "no-cache")
        .header(X_CONTENT_TYPE_OPTIONS, "nosniff");
    response
        .body(Full::new(body.into()))
        .expect("a media type, an address that was asked for, and fixed words")
}
