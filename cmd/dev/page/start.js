"use strict";
// Loading, what can go wrong with it, and which part of the program the address
// asks for.
(function () {
  const cuesta = window.cuesta;
  const root = document.documentElement;
  const byId = id => document.getElementById(id);
  const state = name => { root.dataset.cuesta = name; };
  const again = "Load the page again; if that does not help, try another browser.";

  // The address: #bench, #hall (which nothing means too), #words, #form, #lecture=NAME, #plane=035/30&seed=3.
  function route() {
    const asked = new Map();
    for (const word of location.hash.slice(1).split("&").filter(Boolean)) {
      const cut = word.indexOf("=");
      let value = cut < 0 ? "" : word.slice(cut + 1);
      try {
        value = decodeURIComponent(value);
      } catch (err) { // kept as it is
      }
      asked.set(cut < 0 ? word : word.slice(0, cut), value);
    }
    return asked;
  }
  function argumentsOf(asked) {
    const args = ["cuesta"];
    for (const flag of ["words", "form", "hall"]) {
      if (asked.has(flag)) {
        args.push("--" + flag);
      }
    }
    const more = ["lecture", "plane", "seed"];
    if (!["bench", "words", "form", "hall", ...more].some(word => asked.has(word))) {
      args.push("--hall");
    }
    for (const flag of more) {
      if (asked.has(flag)) {
        args.push("--" + flag + "=" + asked.get(flag));
      }
    }
    return args;
  }
  const toWords = () => {
    const asked = route();
    const kept = ["form", "lecture", "plane", "seed"].filter(k => asked.has(k))
      .map(k => "&" + k + (asked.get(k) && "=" + encodeURIComponent(asked.get(k))));
    location.hash = "#words" + kept.join("");
  };
  cuesta.toWords = () => { location.hash = "#words"; };
  // at notes where the program has gone, so that loading the page again leads
  // there.
  cuesta.at = place => history.replaceState(null, "", "#" + place);
  window.addEventListener("hashchange", () => location.reload());

  // What stands in the way.

  function problem(title, words, help, ways) {
    state("failed");
    byId("loading").hidden = true;
    byId("mirror").hidden = true;
    byId("words").hidden = true;
    byId("told").hidden = false;
    byId("problem-title").textContent = title;
    byId("problem-words").textContent = words;
    byId("problem-help").textContent = help;
    byId("problem").hidden = false;
    byId("ways").hidden = !ways;
    byId("retry").hidden = !(ways && ways.includes("retry"));
    byId("to-words").hidden = !(ways && ways.includes("words"));
  }
  // failed is told by the program when it cannot go on.
  cuesta.failed = words => problem("The bench could not go on", words, again, ["retry", "words"]);
  // misread is told where the address asks for what there is not.
  let misled = false;
  cuesta.misread = words => (misled = true) && problem("The address of this page asks for something else", words,
    "A plane is written as in #plane=035/30, and a seed as in #seed=7; #bench is the bench.", ["retry"]);
  cuesta.ended = () => problem("The bench has ended", "What was to be kept has been kept.", "Load the page again to go on.", ["retry"]);
  byId("retry").addEventListener("click", () => {
    if (misled) {
      location.hash = "#bench";
    } else {
      location.reload();
    }
  });
  byId("to-words").addEventListener("click", toWords);

  // drawsHere tries to draw, on the canvas that the window library will get, as
  // that asks for it: to make it ready for drawing takes long, and is done while
  // the program comes in.
  function drawsHere() {
    const canvas = document.createElement("canvas");
    try {
      if (!canvas.getContext("webgl2", { alpha: true, premultipliedAlpha: true, stencil: true })) {
        return false;
      }
    } catch (err) {
      return false;
    }
    document.createElement = function (name, ...more) {
      if (name !== "canvas") {
        return Document.prototype.createElement.call(this, name, ...more);
      }
      delete document.createElement;
      return canvas;
    };
    return true;
  }
  function lacks() {
    if (location.protocol === "file:") {
      problem("This page must be served", "Opened as a file from a folder, a page may not load the program that lies beside it.",
        "Serve the folder with any web server and open its address, for example with: python3 -m http.server", null);
    } else if (!("WebAssembly" in window)) {
      problem("This browser lacks WebAssembly", "The bench is a program in WebAssembly, which this browser cannot run, or which is switched off.",
        "A current browser can run it.", null);
    } else if (!("DecompressionStream" in window) || !WebAssembly.instantiateStreaming) {
      problem("This browser is too old for the bench", "It cannot unpack the program while it loads.", "A current browser can.", null);
    } else {
      return false;
    }
    return true;
  }
  // lacksDrawing is asked while the program comes in: the answer takes a while.
  function lacksDrawing() {
    if (!route().has("words") && !drawsHere()) {
      problem("This browser cannot draw the bench", "The bench is drawn with WebGL 2, and this browser has none, or it is switched off.",
        "Switch on hardware acceleration in the browser's settings, or work at the bench in words: it needs no drawing, and all can be measured there.",
        ["words", "retry"]);
    } else {
      return false;
    }
    return true;
  }

  // awaken has the browser read what is kept for this page while the program
  // comes in, which will ask for it before its first frame.
  function awaken() {
    try {
      localStorage.getItem("");
    } catch (err) { // a browser that keeps nothing
    }
  }

  // Loading.

  const line = byId("line"), progress = byId("progress");
  const packed = Number(document.body.dataset.packed) || 0, whole = Number(document.body.dataset.whole) || 0;
  const mega = n => (n / 1e6).toFixed(1);
  let told = -1;

  // counted passes bytes on and tells how many have come.
  function counted(size) {
    let come = 0;
    return new TransformStream({
      transform(chunk, out) {
        come += chunk.byteLength;
        const share = size ? Math.min(100, Math.floor(100 * come / size)) : 0;
        if (share !== told) {
          told = progress.value = share;
          if (share % 25 === 0) { // read aloud: not too often
            line.textContent = "The bench is being loaded: " + mega(come) + " of " + mega(size) + " MB.";
          }
        }
        out.enqueue(chunk);
      },
      flush() {
        progress.removeAttribute("value");
        line.textContent = "The bench is starting.";
      },
    });
  }

  // isPacked says whether the answer is still compressed: some servers tell the
  // browser to unpack it on the way.
  async function isPacked(stream) {
    const [look, rest] = stream.tee();
    const reader = look.getReader();
    const first = (await reader.read()).value || new Uint8Array(0);
    reader.cancel();
    return [first[0] === 0x1f && first[1] === 0x8b, rest];
  }

  async function program() {
    const answer = await fetch("cuesta.wasm.gz");
    if (!answer.ok || !answer.body) {
      throw new Error("the server answered " + answer.status + " " + answer.statusText);
    }
    const [packedStill, body] = await isPacked(answer.body);
    let stream = body.pipeThrough(counted(packedStill ? packed : whole));
    if (packedStill) {
      stream = stream.pipeThrough(new DecompressionStream("gzip"));
    }
    return new Response(stream, { headers: { "Content-Type": "application/wasm" } });
  }

  async function load() {
    const go = new Go();
    go.argv = argumentsOf(route());
    let started;
    try {
      const coming = WebAssembly.instantiateStreaming(program(), go.importObject);
      if (lacksDrawing()) {
        coming.catch(() => {});
        return;
      }
      awaken();
      started = await coming;
    } catch (err) {
      problem("The bench could not be loaded", "Its program did not arrive whole: " + err.message + ".",
        "Look whether this machine is connected, then try again. Once loaded, the bench works without a connection.", ["retry"]);
      return;
    }
    if (route().has("words")) {
      keepCopy();
    }
    cuesta.exit = code => {
      if (root.dataset.cuesta !== "failed") {
        if (code === 0) {
          cuesta.ended();
        } else {
          cuesta.failed("The program stopped (" + code + "). What had been recorded is kept.");
        }
      }
    };
    go.exit = cuesta.exit;
    try {
      await go.run(started.instance);
    } catch (err) {
      cuesta.failed(err.message + ".");
    }
  }

  // drawn is told by the program when its first frame stands on the canvas.
  cuesta.drawn = () => {
    performance.mark("cuesta-first-frame");
    for (const canvas of document.querySelectorAll("body > canvas")) {
      canvas.setAttribute("aria-hidden", "true");
      canvas.removeAttribute("tabindex");
    }
    byId("told").hidden = true;
    byId("mirror").hidden = false;
    state("drawn");
    window.dispatchEvent(new Event("resize")); // the page may be higher from now on than its window
  };
  // mirrored is told when the controls stand over the first frame: now the page
  // can be used.
  cuesta.mirrored = () => {
    if (root.dataset.cuesta === "drawn") {
      state("ready");
      pace();
      keepCopy();
    }
  };

  // firstTime says whether something is told for the first time in this visit.
  const firstTime = what => {
    try {
      const told = sessionStorage.getItem(what) !== null;
      sessionStorage.setItem(what, "told");
      return !told;
    } catch (err) { // a browser that keeps nothing
      return true;
    }
  };
  // pace measures the first frames and offers the bench in words where they
  // take long.
  const slowFrame = 1000 / 15, measureFor = 1500;
  function pace() {
    const times = [];
    let first = 0, last = 0;
    requestAnimationFrame(function frame(now) {
      if (last) {
        times.push(now - last);
      }
      first = first || now;
      last = now;
      if (now - first < measureFor || times.length < 5) {
        requestAnimationFrame(frame);
        return;
      }
      times.sort((a, b) => a - b);
      cuesta.frameTime = times[times.length >> 1];
      if (cuesta.frameTime > slowFrame && firstTime("cuesta.slow")) {
        cuesta.notice("Drawing is slow here.", toWords);
      }
    });
  }

  // The window library takes its canvas from the size of the body, times the
  // pixels that a pixel of the page had at the start. A page that is zoomed has
  // more of them: the library is told of a body that is larger by as much.
  function zoomed() {
    const first = window.devicePixelRatio || 1;
    for (const side of ["clientWidth", "clientHeight"]) {
      const own = Object.getOwnPropertyDescriptor(Element.prototype, side).get;
      Object.defineProperty(document.body, side, {
        configurable: true,
        get() { return own.call(this) * (window.devicePixelRatio || 1) / first; },
      });
    }
  }

  // A copy of the program is kept, so that it works without a connection. That
  // waits until the first frame stands.
  function keepCopy() {
    if ("serviceWorker" in navigator && window.isSecureContext) {
      navigator.serviceWorker.register("sw.js", { scope: "./" }).catch(() => {});
    }
  }

  if (!lacks()) {
    byId("loading").hidden = false;
    zoomed();
    load();
  }
})();
