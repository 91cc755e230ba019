"use strict";
// Keeps a copy of the program in this browser. The name of the copy follows
// from what is in it, and from the folder, so that copies under other addresses
// stay apart.
const files = [{{range .Files}}"{{.}}", {{end}}];
const prefix = "cuesta " + self.registration.scope + " ";
const name = prefix + "{{.Mark}}";

self.addEventListener("install", e => {
  const fresh = files.map(f => new Request(f, { cache: "no-cache" }));
  e.waitUntil(caches.open(name).then(c => c.addAll(fresh)));
});

self.addEventListener("activate", e => {
  e.waitUntil(caches.keys().then(all => Promise.all(all.filter(k => k.startsWith(prefix) && k !== name).map(k => caches.delete(k)))));
});

self.addEventListener("fetch", e => {
  const to = new URL(e.request.url);
  const scope = new URL(self.registration.scope);
  if (e.request.method !== "GET" || to.origin !== scope.origin || !to.pathname.startsWith(scope.pathname)) {
    return;
  }
  const file = to.pathname.slice(scope.pathname.length) || "index.html";
  if (files.includes(file)) {
    e.respondWith(caches.open(name).then(c => c.match(file)).then(kept => kept || fetch(e.request)));
  }
});
