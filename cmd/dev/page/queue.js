"use strict";
// What is done on the page is noted down as it comes; the program takes all of
// it once a frame, in order. Nothing depends on how long a frame takes.
(function () {
  const cuesta = window.cuesta = window.cuesta || {};
  const mirror = document.getElementById("mirror");
  let queue = [];
  let sent = 0; // events other than moves: the program tells how many it knows of

  cuesta.note = event => {
    if (event.Kind !== "move") {
      sent++;
    }
    queue.push(event);
  };
  cuesta.sent = () => sent;
  cuesta.act = (kind, id, text) => cuesta.note({ Do: "act", Kind: kind, ID: id, Text: text || "" });
  cuesta.key = (key, mods, repeat) => cuesta.note({ Do: "key", Key: key, Mods: mods || 0, Repeat: Boolean(repeat) });

  // drain hands the program what was noted down, or null.
  cuesta.drain = () => {
    if (queue.length === 0) {
      return null;
    }
    const text = JSON.stringify(queue);
    queue = [];
    return text;
  };

  const running = () => !mirror.hidden;

  // Keys.

  const SHIFT = 1, CTRL = 2, ALT = 4;
  function modsOf(e) {
    const third = e.getModifierState && e.getModifierState("AltGraph");
    return (e.shiftKey ? SHIFT : 0) | ((e.ctrlKey || e.metaKey) && !third ? CTRL : 0) | (e.altKey && !third ? ALT : 0);
  }

  // The browser keeps the keys it has uses for: finding, loading again, the
  // whole screen, its tools.
  const named = new Set(["ArrowLeft", "ArrowRight", "ArrowUp", "ArrowDown", "Enter", "Escape", " ", "Backspace",
    "Delete", "Home", "End", "PageUp", "PageDown", "F1", "F2", "F4", "F8", "F9", "F10"]);
  const isSign = key => [...key].length === 1 && key !== " ";

  // wanted says whether a stroke is for the program.
  function wanted(e) {
    if (e.isComposing || e.keyCode === 229 || !(named.has(e.key) || isSign(e.key))) {
      return false;
    }
    const mods = modsOf(e);
    if (mods & CTRL) { // the browser's own, but for taking back and fine steps
      return e.key.toLowerCase() === "z" && !(mods & (SHIFT | ALT)) || e.key.startsWith("Arrow");
    }
    return !(mods & ALT) || e.key !== "ArrowLeft" && e.key !== "ArrowRight" && e.key !== "Home" && e.key !== "F4";
  }

  // inField says what becomes of a stroke in a field that is being written: the
  // program's, the browser's, or both.
  function inField(field, e) {
    const plain = !e.shiftKey && !e.ctrlKey && !e.metaKey && !e.altKey;
    const chosen = field.selectionStart !== field.selectionEnd;
    switch (e.key) {
      case "ArrowLeft": case "ArrowRight": case "Home": case "End":
        return plain && !chosen ? "both" : "browser";
      case "Backspace": case "Delete": case " ":
        return chosen || e.ctrlKey || e.metaKey || e.altKey ? "browser" : "program";
    }
    return isSign(e.key) && chosen && !e.ctrlKey && !e.metaKey ? "browser" : "program";
  }

  const ours = target => target === document.body || target === document.documentElement || mirror.contains(target);
  const taken = new Set(); // keys whose way up is ours too

  document.addEventListener("keydown", e => {
    if (!running() || !ours(e.target) || !wanted(e)) {
      return;
    }
    const whose = e.target.tagName === "INPUT" ? inField(e.target, e) : "program";
    if (whose === "browser") {
      return;
    }
    const scrolls = e.key.startsWith("Page") && document.documentElement.classList.contains("scrolls");
    if (whose === "program" && !scrolls) {
      e.preventDefault();
      taken.add(e.key);
    }
    cuesta.key(e.key, modsOf(e), e.repeat);
  }, true);

  // A sign that the program has is not written by the browser as well: where a
  // frame comes between the stroke and its sign, Chromium forgets that the
  // stroke was taken.
  mirror.addEventListener("beforeinput", e => {
    if (e.inputType === "insertText" && taken.has(e.data)) {
      e.preventDefault();
    }
  });

  document.addEventListener("keyup", e => {
    if (taken.delete(e.key)) {
      e.preventDefault();
    }
  }, true);

  // Pointers.

  let held = null; // the pointer that is down
  let lifted = { id: -1, at: -Infinity }; // the one that was, until its click has come

  function pointer(kind, e, wheel) {
    const r = mirror.getBoundingClientRect();
    cuesta.note({ Do: "pointer", Kind: kind, X: e.clientX - r.left, Y: e.clientY - r.top, Wheel: wheel || 0, Touch: e.pointerType === "touch" });
  }

  mirror.addEventListener("pointerdown", e => {
    if (!e.isPrimary || e.button !== 0 || held !== null) {
      return;
    }
    held = e.pointerId;
    if (e.target.tagName !== "INPUT" && e.target.setPointerCapture) {
      try {
        mirror.setPointerCapture(e.pointerId);
      } catch (err) { // a pointer that is up already
      }
    }
    pointer("down", e);
  });
  // A finger that scrolls the page is not to turn the plate as well.
  const scrolling = e => e.pointerType === "touch" && document.documentElement.classList.contains("scrolls");
  mirror.addEventListener("pointermove", e => {
    if (e.isPrimary && !scrolling(e)) {
      pointer("move", e);
    }
  });
  function up(e) {
    if (e.pointerId === held) {
      held = null;
      lifted = e.type === "pointerup" ? { id: e.pointerId, at: e.timeStamp } : { id: -1, at: -Infinity };
      pointer("up", e);
    }
  }
  window.addEventListener("pointerup", up);
  window.addEventListener("pointercancel", up);

  // The program says what has the keyboard after a press, not the browser; a
  // field opens the keyboard of a phone by itself.
  mirror.addEventListener("mousedown", e => {
    if (e.target.tagName !== "INPUT") {
      e.preventDefault();
    }
  });
  mirror.addEventListener("contextmenu", e => {
    if (e.target.tagName !== "INPUT") {
      e.preventDefault();
    }
  });
  mirror.addEventListener("dragstart", e => e.preventDefault());

  // byPointer says whether a click ends a press that the program knows of
  // already, however late a slow page hears of it. A click of another kind is a
  // screen reader's or a switch's. Some browsers do not say whose a click is:
  // there the time at which both were made tells.
  cuesta.byPointer = click => {
    const yes = click.pointerId >= 0 ? click.pointerId === lifted.id : click.timeStamp - lifted.at < 700;
    lifted = { id: -1, at: -Infinity };
    return yes;
  };

  const rowHeight = [1 / 100, 1 / 3, 1]; // by deltaMode: pixels, lines, pages
  mirror.addEventListener("wheel", e => {
    if (e.ctrlKey || document.documentElement.classList.contains("scrolls")) {
      return;
    }
    e.preventDefault();
    pointer("wheel", e, -e.deltaY * rowHeight[e.deltaMode]);
  }, { passive: false });
})();
