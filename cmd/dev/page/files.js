"use strict";
// Files come in by a chooser or by being dropped on the page, and go out as
// downloads. Nothing leaves the machine.
(function () {
  const cuesta = window.cuesta;
  const byId = id => document.getElementById(id);
  const chooser = byId("chooser"), input = byId("file"), problem = byId("chooser-problem");
  const mostBytes = 64 << 20;
  // want asks for a file. The program takes it by brought, which answers "" or
  // what is wrong with it.
  cuesta.want = (title, words) => {
    byId("chooser-title").textContent = title;
    byId("chooser-words").textContent = words;
    show();
  };
  function show() {
    problem.textContent = "";
    input.value = "";
    if (!chooser.open) {
      chooser.showModal();
    }
    input.focus();
  }

  async function bring(files) {
    if (!files || files.length === 0) {
      return;
    }
    const file = files[0];
    if (!cuesta.brought) {
      return;
    }
    let wrong = "";
    if (file.size > mostBytes) {
      wrong = file.name + " is too large to be a form or a lesson.";
    } else {
      try {
        wrong = cuesta.brought(file.name, await file.text());
      } catch (err) {
        wrong = file.name + " could not be read: " + err.message;
      }
    }
    if (wrong) {
      show();
      problem.textContent = wrong;
      return;
    }
    chooser.close();
  }

  input.addEventListener("change", () => bring(input.files));
  byId("chooser-close").addEventListener("click", () => chooser.close());
  chooser.addEventListener("close", () => cuesta.attend());
  const carries = e => e.dataTransfer && [...e.dataTransfer.types].includes("Files");
  document.addEventListener("dragover", e => {
    if (carries(e)) {
      e.preventDefault();
    }
  });
  document.addEventListener("drop", e => {
    if (carries(e)) {
      e.preventDefault();
      bring(e.dataTransfer.files);
    }
  });

  // unkept says that something would be lost with the page.
  let unkept = false;
  cuesta.unkept = yes => { unkept = yes; };
  window.addEventListener("beforeunload", e => {
    if (unkept) {
      e.preventDefault();
    }
  });

  // save hands a file to the browser's downloads.
  cuesta.save = (name, type, data) => {
    const address = URL.createObjectURL(new Blob([data], { type: type }));
    const a = document.createElement("a");
    a.href = address;
    a.download = name;
    a.hidden = true;
    document.body.appendChild(a);
    a.click();
    a.remove();
    setTimeout(() => URL.revokeObjectURL(address), 60000);
  };
})();
