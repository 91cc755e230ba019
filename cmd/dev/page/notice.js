"use strict";
// A line at the lower edge of the page that tells something about the page
// itself. The program is drawn above it, so that it hides nothing.
(function () {
  const cuesta = window.cuesta;
  const byId = id => document.getElementById(id);
  const bar = byId("notice");
  const waiting = []; // notices that come while one is shown
  let way = null;

  function room() {
    const now = bar.hidden ? "0px" : bar.offsetHeight + "px";
    if (document.documentElement.style.getPropertyValue("--notice") !== now) {
      document.documentElement.style.setProperty("--notice", now);
      window.dispatchEvent(new Event("resize")); // the program takes the room that is left
    }
  }

  // notice shows a line; with a way to the bench in words where there is one.
  cuesta.notice = (words, toWords) => {
    if (!bar.hidden) {
      waiting.push([words, toWords]);
      return;
    }
    way = toWords || null;
    byId("notice-words").textContent = words;
    byId("notice-way").hidden = !way;
    bar.hidden = false;
    cuesta.tell([words]);
    room();
  };
  byId("notice-way").addEventListener("click", () => way && way());
  byId("notice-close").addEventListener("click", () => {
    bar.hidden = true;
    room();
    if (waiting.length > 0) {
      cuesta.notice(...waiting.shift());
    }
    cuesta.attend();
  });
  // text is told whether the text is larger than usual: the program then needs
  // a larger page.
  cuesta.text = large => {
    document.documentElement.dataset.text = large ? "large" : "usual";
    window.dispatchEvent(new Event("resize"));
  };

  // typeface takes the program's own type, for what the page writes itself.
  cuesta.typeface = (data, weight) => {
    try {
      document.fonts.add(new FontFace("cuesta", data, { weight: weight }));
    } catch (err) { // the browser's own type will do
    }
  };

  // announce says a sentence aloud where that is wanted. What a person does next
  // cuts it short.
  cuesta.announce = (words, aloud) => {
    if (aloud && window.speechSynthesis) {
      const said = new SpeechSynthesisUtterance(words);
      said.lang = "en";
      window.speechSynthesis.speak(said);
    }
  };
  const hush = () => {
    if (window.speechSynthesis && window.speechSynthesis.speaking) {
      window.speechSynthesis.cancel();
    }
  };
  document.addEventListener("keydown", hush, true);
  document.addEventListener("pointerdown", hush, true);
  window.addEventListener("pagehide", hush);

  let width = window.innerWidth;
  window.addEventListener("resize", () => {
    if (!bar.hidden && width !== window.innerWidth) {
      width = window.innerWidth;
      room();
    }
  });
})();
