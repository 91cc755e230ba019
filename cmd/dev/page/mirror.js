"use strict";
// The screen in words, as real controls that lie unseen over the picture: the
// program says what there is, the page keeps it up to date, and what is done to
// a control goes back to the program.
(function () {
  const cuesta = window.cuesta;
  const root = document.documentElement;
  const mirror = document.getElementById("mirror");
  const live = document.getElementById("live");
  let made = new Map(); // by key: {role, part, node, about}
  let focus = 0; // the control that has the keyboard, as last told
  let asked = 0; // the control that the page has given it

  const idOf = node => {
    const own = node && node.closest ? node.closest("[data-id]") : null;
    return own ? Number(own.dataset.id) : 0;
  };

  const makers = {
    heading: () => document.createElement("h2"),
    label: () => document.createElement("p"),
    status: () => document.createElement("p"),
    button: button,
    toggle: button,
    choice: () => withRole(button(), "radio"),
    image: () => withRole(document.createElement("div"), "img"),
    place: () => withRole(document.createElement("div"), "application"),
    group: () => withRole(document.createElement("div"), "group"),
    choices: () => withRole(document.createElement("div"), "radiogroup"),
    lines: () => withRole(document.createElement("div"), "list"),
    line: () => withRole(document.createElement("div"), "listitem"),
    field: field,
  };
  function button() {
    const b = document.createElement("button");
    b.type = "button";
    return b;
  }
  function withRole(node, role) {
    node.setAttribute("role", role);
    return node;
  }
  function field() {
    const f = document.createElement("input");
    f.type = "text";
    f.autocomplete = "off";
    f.spellcheck = false;
    f.setAttribute("autocapitalize", "characters");
    f.setAttribute("enterkeyhint", "done");
    return f;
  }

  const set = (node, name, value) => {
    if (value === null || value === undefined || value === "") {
      node.removeAttribute(name);
    } else if (node.getAttribute(name) !== value) {
      node.setAttribute(name, value);
    }
  };
  const text = (node, words) => {
    if (node.textContent !== words) {
      node.textContent = words;
    }
  };
  const joined = (...words) => words.filter(Boolean).join(": ");

  // shortcut is a key as aria-keyshortcuts wants it, or "" for keys in words.
  function shortcut(keys) {
    const names = (keys || "").split(/,? or |, /);
    return names.every(k => /^([A-Z0-9]|F\d\d?|Enter|Escape|Space|Tab)$/.test(k)) ? names.join(" ") : "";
  }

  // roleOf is how a part is shown on the page: a picture that can have the
  // keyboard is a place where keys work.
  const roleOf = part => part.role === "image" && part.can ? "place" : part.role;

  // about is an unseen paragraph that describes a control further.
  function about(entry, words) {
    if (!words) {
      if (entry.about) {
        entry.about.remove();
        entry.about = null;
        entry.node.removeAttribute("aria-describedby");
      }
      return;
    }
    if (!entry.about) {
      entry.about = document.createElement("p");
      entry.about.id = "about-" + entry.key;
      entry.about.hidden = true;
      document.body.appendChild(entry.about);
      entry.node.setAttribute("aria-describedby", entry.about.id);
    }
    text(entry.about, words);
  }

  const show = {
    heading: (e, p) => text(e.node, joined(p.name, p.value)),
    label: (e, p) => text(e.node, joined(p.name, p.value)),
    status: (e, p) => text(e.node, joined(p.name, p.value)),
    button: control,
    toggle: (e, p) => {
      control(e, p);
      set(e.node, "aria-pressed", String(Boolean(p.on)));
    },
    choice: (e, p) => {
      control(e, p);
      set(e.node, "aria-checked", String(Boolean(p.on)));
    },
    image: (e, p) => set(e.node, "aria-label", joined(p.name, p.value) || "picture"),
    place: (e, p) => {
      set(e.node, "aria-label", p.name);
      e.node.tabIndex = 0;
      about(e, [p.value, p.keys && "Keys: " + p.keys + "."].filter(Boolean).join(" "));
    },
    group: (e, p) => set(e.node, "aria-label", p.name),
    choices: (e, p) => set(e.node, "aria-label", p.name),
    lines: () => {},
    line: (e, p) => {
      text(e.node, joined(p.name, p.value));
      e.node.tabIndex = 0;
    },
    field: (e, p) => {
      control(e, p);
      set(e.node, "inputmode", p.writes);
      e.node.readOnly = !p.can && !p.disabled;
    },
  };
  function control(e, p) {
    const key = shortcut(p.keys);
    if (e.node.tagName === "INPUT") {
      set(e.node, "aria-label", p.name);
      about(e, p.keys && !key ? "Keys: " + p.keys + "." : "");
    } else {
      text(e.node, p.name || p.value);
      about(e, [p.name ? p.value : "", p.keys && !key ? "Keys: " + p.keys + "." : ""].filter(Boolean).join(" "));
    }
    set(e.node, "aria-keyshortcuts", key);
    e.node.disabled = Boolean(p.disabled);
    e.node.tabIndex = p.can ? 0 : -1;
  }

  function place(node, box, from) {
    const s = node.style;
    s.left = box[0] - from[0] + "px";
    s.top = box[1] - from[1] + "px";
    s.width = box[2] + "px";
    s.height = box[3] + "px";
    if (node.tagName === "INPUT") { // as large as it is drawn, so that the caret is where it is drawn
      s.fontSize = Math.max(16, .54 * box[3]) + "px";
    }
  }

  // patch makes the children of a node those that the parts say, touching as
  // little as it can: a control that is moved loses the keyboard.
  function patch(parent, parts, path, from, next) {
    const want = parts.map((p, i) => {
      const role = roleOf(p);
      const key = p.id ? "n" + p.id : path + "-" + i;
      let e = made.get(key);
      if (!e || e.role !== role || next.has(key)) {
        const free = next.has(key) ? path + "-" + i : key;
        e = { key: free, role: role, node: makers[role](), about: null };
        if (p.id) {
          e.node.dataset.id = p.id;
        }
      }
      next.set(e.key, e);
      return [e, p];
    });
    const keep = new Set(want.map(([e]) => e.node));
    for (const child of [...parent.children]) {
      if (!keep.has(child)) {
        child.remove();
      }
    }
    let at = parent.firstElementChild;
    for (const [e, p] of want) {
      if (at === e.node) {
        at = at.nextElementSibling;
      } else {
        parent.insertBefore(e.node, at);
      }
      show[e.role](e, p);
      e.part = p;
      place(e.node, p.box, from);
      if (p.parts) {
        patch(e.node, p.parts, e.key, p.box, next);
      }
    }
  }

  // grouped puts choices that follow each other under one group, and lines of a
  // text under one list, whose place is that of all of them.
  function grouped(parts) {
    const out = [];
    for (const p of parts || []) {
      const q = p.parts ? Object.assign({}, p, { parts: grouped(p.parts) }) : p;
      const last = out[out.length - 1];
      if (p.role === "line" && last && last.role === "lines") {
        last.parts.push(q);
      } else if (p.role === "line") {
        out.push({ role: "lines", box: [0, 0, 0, 0], parts: [q] });
      } else if (p.role !== "choice") {
        out.push(q);
      } else if (last && last.role === "choices" && rowOf(last.parts[0]) === rowOf(q)) {
        last.parts.push(q);
      } else {
        out.push({ role: "choices", name: rowOf(q), box: [0, 0, 0, 0], parts: [q] });
      }
    }
    return out;
  }
  // rowOf is the name of the question that choices belong to, or what they share
  // before a colon.
  const rowOf = p => p.group ? p.group : p.name.includes(": ") ? p.name.split(": ")[0] : "";

  function spread(parts, from) {
    for (const p of parts) {
      if (p.role === "choices" || p.role === "lines") { // holds no place of its own
        p.box = [from[0], from[1], 0, 0];
      }
      if (p.parts) {
        spread(p.parts, p.box);
      }
    }
  }

  // mirror takes the screen in words from the program.
  cuesta.mirror = json => {
    const t = JSON.parse(json);
    const parts = grouped(t.root.parts);
    spread(parts, [0, 0, 0, 0]);
    set(mirror, "aria-label", t.root.name);
    const next = new Map();
    const had = document.activeElement;
    patch(mirror, parts, "x", [0, 0, 0, 0], next);
    for (const [key, e] of made) {
      if (next.get(key) !== e) {
        about(e, "");
      }
    }
    made = next;
    headings();
    scrolls();
    if (t.seen === cuesta.sent()) {
      values();
      follow(t.focus, had);
    }
    cuesta.tell(t.say || []);
    cuesta.mirrored();
  };

  // headings: the first on the screen is the title of the page.
  function headings() {
    let level = "1";
    for (const h of mirror.querySelectorAll("h2")) {
      set(h, "aria-level", level);
      set(h, "role", "heading");
      level = "2";
    }
  }

  function scrolls() {
    root.classList.toggle("scrolls", root.scrollHeight > root.clientHeight + 1 || root.scrollWidth > root.clientWidth + 1);
  }

  // values puts into fields what the program holds, with the caret where it
  // was changed.
  function values() {
    for (const e of made.values()) {
      if (e.role !== "field" || e.composing) {
        continue;
      }
      const now = e.part.value || "", old = e.node.value;
      if (now === old) {
        continue;
      }
      let end = 0;
      while (end < now.length && end < old.length && now[now.length - 1 - end] === old[old.length - 1 - end]) {
        end++;
      }
      e.node.value = now;
      if (document.activeElement === e.node) {
        e.node.setSelectionRange(now.length - end, now.length - end);
      }
    }
  }

  // follow gives the keyboard to the control that the program says, when that
  // has changed, or when the one that had it is gone.
  function follow(id, had) {
    const lost = had && had !== document.body && !document.contains(had);
    const changed = id !== focus;
    focus = id;
    if (!changed && !lost) {
      return;
    }
    cuesta.attend();
  }
  cuesta.attend = () => {
    const e = made.get("n" + focus);
    if (e && e.node !== document.activeElement && !document.querySelector("dialog[open]")) {
      asked = focus;
      e.node.focus();
      asked = 0;
    }
  };

  // tell lets the live region say what is new.
  let quiet = 0;
  cuesta.tell = say => {
    if (say.length === 0) {
      return;
    }
    const words = say.join(" ");
    live.textContent = words === live.textContent ? words + "\u00a0" : words; // the same words again are news too
    clearTimeout(quiet);
    quiet = setTimeout(() => { live.textContent = ""; }, 8000);
  };

  // What is done to a control.

  mirror.addEventListener("focusin", e => {
    const id = idOf(e.target);
    if (id && id !== asked && id !== focus) {
      focus = id;
      cuesta.act("focus", id);
    }
  });
  mirror.addEventListener("click", e => {
    const id = idOf(e.target);
    if (!cuesta.byPointer(e) && id && e.target.tagName !== "INPUT") {
      cuesta.act("activate", id);
    }
  });
  mirror.addEventListener("input", e => {
    const id = idOf(e.target);
    if (id && !e.isComposing) {
      cuesta.act("write", id, e.target.value);
    }
  });
  const composing = on => e => {
    const entry = made.get("n" + idOf(e.target));
    if (entry) {
      entry.composing = on;
      if (!on) {
        cuesta.act("write", idOf(e.target), e.target.value);
      }
    }
  };
  mirror.addEventListener("compositionstart", composing(true));
  mirror.addEventListener("compositionend", composing(false));

  window.addEventListener("resize", scrolls);
})();
