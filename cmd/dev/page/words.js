"use strict";
// The page in words: a line goes to the program, its reply into the log.
(function () {
  const cuesta = window.cuesta;
  const byId = id => document.getElementById(id);
  const log = byId("log"), line = byId("say");
  const past = [];
  let at = 0;

  function add(words, mine) {
    const one = document.createElement("div");
    one.className = mine ? "mine" : "said";
    for (const row of words.split("\n").filter(Boolean)) { // a long reply is read row by row
      const p = document.createElement("p");
      p.textContent = row;
      one.appendChild(p);
    }
    log.appendChild(one);
    const said = mine ? one : log.querySelector(".mine:nth-last-child(2)") || one;
    log.scrollTop = said.offsetTop - log.offsetTop - 12; // a long reply is read from its beginning
  }

  function say(words) {
    const reply = cuesta.line(words);
    const empty = words.trim() === "";
    if (empty && reply === "") {
      return;
    }
    if (!empty) {
      past.push(words);
    }
    at = past.length;
    add(empty ? "Enter" : words, true);
    if (reply !== "") {
      add(reply, false);
    }
  }

  // words shows the page of the bench in words; welcome is its first reply.
  cuesta.words = (title, welcome) => {
    document.title = "cuesta: " + title.toLowerCase();
    byId("words-title").textContent = title;
    byId("told").hidden = true;
    byId("words").hidden = false;
    document.documentElement.dataset.cuesta = "words";
    add(welcome, false);
    line.focus();
  };

  // reply is one that no line has asked for.
  cuesta.reply = words => add(words, false);

  // often are the lines that have buttons.
  cuesta.often = (...lines) => byId("often").replaceChildren(...lines.map(words => {
    const b = document.createElement("button");
    b.type = "button";
    b.textContent = words;
    return b;
  }));

  byId("chooser").addEventListener("close", () => {
    if (!byId("words").hidden) {
      line.focus();
    }
  });
  byId("ask").addEventListener("submit", e => {
    e.preventDefault();
    const words = line.value;
    line.value = "";
    say(words);
  });
  byId("often").addEventListener("click", e => {
    if (e.target.tagName === "BUTTON") {
      say(e.target.textContent);
    }
  });
  line.addEventListener("keydown", e => {
    if (e.isComposing || e.key !== "ArrowUp" && e.key !== "ArrowDown") {
      return;
    }
    const to = Math.max(0, Math.min(past.length, at + (e.key === "ArrowUp" ? -1 : 1)));
    if (to !== at) {
      at = to;
      line.value = past[at] || "";
      e.preventDefault();
    }
  });
})();
