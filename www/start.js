// Loads the core and says what is missing when it cannot run. All else is in Rust.
const missing = (text) => {
  document.getElementById('missing').textContent = text;
  document.getElementById('still').hidden = false;
  document.getElementById('app').hidden = true;
};

if (typeof WebAssembly !== 'object') {
  missing('This browser has no WebAssembly, which moves the picture: try a newer browser.');
} else {
  import('./pkg/two_frames.js')
    .then((core) => core.default())
    .catch((error) => {
      console.error(error);
      missing('The core of this page did not start, so the picture stands still: reload the page, or try another browser.');
    });
}
