// The answer in place. A change in the question, or a link to another answer on the same page, fetches that very page and puts its
// answer where the old one is: the address, the focus and the place on the screen stay true, long work can be stopped, and where
// the line is cut the old answer stays. Without scripts the same form and links load the page.
(() => {
  const ours = () => document.querySelector("[data-alive]");
  const asks = form => form instanceof HTMLFormElement && form.method === "get" && form.closest("[data-alive]") ? form : null;
  const samePage = path => path === location.pathname || (["/", "/can-i-make"].includes(path) && ["/", "/can-i-make"].includes(location.pathname));

  const answer = () => document.querySelector("[data-alive] [data-says]");
  const wordOf = () => document.querySelector("[data-alive] .word, [data-alive] .verdict");

  const line = document.createElement("section");
  line.className = "now";
  line.setAttribute("aria-label", "The answer now");
  line.hidden = true;
  line.innerHTML = '<p role="status"></p><p class="did"></p><button type="button" class="quiet" hidden>Stop</button>'
    + '<a class="button quiet" href="#" hidden>Show the answer</a>';
  const [words, did, stop, up] = line.children;
  let shown = location.pathname + location.search;
  let work = null, slow = 0, typing = 0, said = "", seen = null, next = null;

  // A listener hears the new word, and nothing where the same word stands.
  const say = text => {
    if (!line.isConnected) document.body.append(line);
    if (text !== said) words.textContent = said = text;
    line.hidden = !text;
    const change = document.querySelector("[data-alive] .change");
    did.replaceChildren(...(change ? [...change.cloneNode(true).childNodes].flatMap(n => [n, " "]) : []));
  };
  const idle = () => {
    clearTimeout(slow);
    work = null;
    stop.hidden = true;
    up.hidden = !wordOf();
    document.documentElement.classList.remove("working");
  };

  // What the address of a form would be; a change of hat lets go of what was decided about the parts of the old one.
  const addressOf = (form, changed) => {
    const pairs = [...new FormData(form)].filter(([, value]) => value !== "");
    const gone = JSON.parse(form.dataset.gone ?? "{}")[changed] ?? [];
    return new URL(form.action).pathname + "?" + new URLSearchParams(pairs.filter(([name]) => !gone.includes(name)));
  };

  // How to find again what has the focus: the row of its part, its id, its name and value, or else the answer's word.
  const mark = element => {
    if (!element || !ours()?.contains(element)) return null;
    const row = element.closest(".row[data-part], .menu[data-part]");
    if (row) return [`.row[data-part="${CSS.escape(row.dataset.part)}"] .dots`];
    const look = element.dataset.turn ? "turn" : element.dataset.view ? "view" : null;
    if (look) return [`.turn [data-${look}="${element.dataset[look]}"]`];
    if (element.matches(".turnable")) return [".turnable:not(.before)"];
    if (element.id) return ["#" + CSS.escape(element.id)];
    if (element.name) return [`[name="${CSS.escape(element.name)}"][value="${CSS.escape(element.value)}"]`, "[data-alive] summary"];
    return ["[data-alive] .word, [data-alive] .verdict"];
  };
  const focusOn = places => {
    const to = places?.map(place => document.querySelector(place)).find(found => found);
    if (!to) return;
    if (!to.matches("a, button, input, select, summary")) to.tabIndex = -1;
    to.focus({ preventScroll: true });
    return to;
  };

  // The hat is still looked at from where it was, unless the address says from where.
  const looked = address => {
    const to = new URL(address, location.origin), stage = document.querySelector("[data-alive] .hat-stage");
    if (!stage || to.searchParams.has("view") || to.searchParams.has("turn")) return address;
    if (stage.dataset.view !== "head") to.searchParams.set("view", stage.dataset.view);
    if (stage.dataset.turn !== "0") to.searchParams.set("turn", stage.dataset.turn);
    return to.pathname + to.search;
  };

  async function show(address, { push = true, form = null, sent = "" } = {}) {
    work?.abort();
    clearTimeout(slow);
    const mine = work = new AbortController();
    mine.ofForm = !!form;
    const old = said;
    slow = setTimeout(() => {
      if (work !== mine) return;
      say("Working it out");
      stop.hidden = false;
      up.hidden = true;
      document.documentElement.classList.add("working");
    }, 300);
    let page;
    try {
      const response = await fetch(address, { signal: mine.signal, headers: { accept: "text/html" }, credentials: "same-origin" });
      page = new DOMParser().parseFromString(await response.text(), "text/html");
    } catch (error) {
      if (work !== mine) return;
      idle();
      next = null;
      say(`${error.name === "AbortError" ? "Stopped." : "Lost contact with StashMatch."} This is still the answer from before.`);
      return;
    }
    if (work !== mine) return;
    const fresh = page.querySelector("[data-alive]"), here = ours();
    if (!fresh || !here) { location.assign(address); return; }

    // What was typed since is not thrown away: its own answer is on the way.
    if (form?.isConnected && addressOf(form) !== sent) { idle(); say(old); return; }
    const place = mark(document.activeElement);
    const { selectionStart: from, selectionEnd: until } = document.activeElement;
    const top = place && document.activeElement.getBoundingClientRect().top;
    // A field that cannot be read leaves the last answer standing, dimmed.
    if (!fresh.querySelector("[data-says]") && fresh.querySelector(".field-message") && here.querySelector("[data-says]")) {
      here.querySelector(".ask")?.replaceWith(document.adoptNode(fresh.querySelector(".ask")));
      here.classList.add("stale");
      focusOn(place);
      idle();
      say(ours().querySelector(".field-message")?.textContent ?? "");
      return;
    }
    const nameOf = d => (d.id || d.className) + "|" + d.parentElement?.className;
    const open = [...here.querySelectorAll("details[open]")].map(nameOf);
    const before = here.querySelector(".pic > .turnable");
    here.replaceChildren(...document.adoptNode(fresh).childNodes);
    here.classList.remove("stale");
    for (const [name, value] of Object.entries(fresh.dataset)) here.dataset[name] = value;
    for (const d of here.querySelectorAll("details")) if (open.includes(nameOf(d))) d.open = true;
    linger(before, here.querySelector(".pic > .turnable"));
    document.title = page.title;
    if (push) history.pushState(null, "", address);
    shown = location.pathname + location.search;
    const to = focusOn(place);
    if (from != null && to?.matches("input[inputmode]")) to.setSelectionRange(from, until);
    if (to && !to.matches(".word, .verdict")) scrollBy({ top: to.getBoundingClientRect().top - top, behavior: "instant" });
    document.dispatchEvent(new Event("answered"));
    idle();
    say(answer()?.dataset.says ?? ours().querySelector("[role=alert], .cannot .lead")?.textContent ?? "");
    watch();
    document.dispatchEvent(new Event("answer:new"));
    const then = next;
    next = null;
    then?.();
  }

  // The hat of before stays until the new one is painted: the words do not wait for it, and nothing flashes.
  function linger(before, now) {
    const [old, img] = [before?.querySelector("img"), now?.querySelector("img")];
    if (!old || !img || old.currentSrc === img.currentSrc || img.complete || !old.complete) return;
    before.classList.add("before");
    for (const name of before.getAttributeNames()) if (name === "role" || name === "tabindex" || name.startsWith("aria-")) before.removeAttribute(name);
    before.setAttribute("aria-hidden", "true");
    now.before(before);
    const gone = () => before.remove();
    img.addEventListener("load", gone, { once: true });
    img.addEventListener("error", gone, { once: true });
  }

  // The line is shown while the answer itself is out of sight.
  function watch() {
    seen?.disconnect();
    line.classList.add("in-sight");
    const word = wordOf();
    if (!word) return;
    seen = new IntersectionObserver(([entry]) => line.classList.toggle("in-sight", entry.isIntersecting && !work));
    seen.observe(word);
  }

  const changed = event => {
    const form = asks(event.target.form);
    if (!form || form.dataset.ask !== "change") return;
    clearTimeout(typing);

    // Between a link and its answer the form is of the old question: the change waits for the new one.
    if (work && !work.ofForm) {
      const { name, value, checked, type } = event.target;
      next = () => {
        const fields = [...(ours()?.querySelectorAll(`[data-ask] [name="${CSS.escape(name)}"]`) ?? [])];
        const field = fields.find(f => !["checkbox", "radio"].includes(type) || f.value === value);
        if (!field) return;
        if (["checkbox", "radio"].includes(type)) field.checked = checked; else field.value = value;
        field.dispatchEvent(new Event("change", { bubbles: true }));
      };
      return;
    }
    const send = () => { const sent = addressOf(form); show(looked(addressOf(form, event.target.name)), { form, sent }); };
    if (event.type === "change") send();
    else if (event.target.matches("[inputmode]")) typing = setTimeout(send, 350);
  };
  document.addEventListener("change", changed);
  document.addEventListener("input", changed);

  document.addEventListener("submit", event => {
    const form = asks(event.target);
    if (!form) return;
    event.preventDefault();
    clearTimeout(typing);
    const sent = addressOf(form);
    show(sent, { form, sent });
  });

  document.addEventListener("click", event => {
    const link = event.target.closest?.("[data-alive] a[href]");
    if (!link || event.button || event.ctrlKey || event.metaKey || event.shiftKey || event.altKey) return;
    if (link.hasAttribute("download") || link.target) return;
    const to = new URL(link.href);
    if (to.origin !== location.origin || !samePage(to.pathname) || !to.search || to.searchParams.has("choose")) return;
    event.preventDefault();
    event.stopPropagation();

    // Before a change has its answer a link is of the old question: the same link of the new one is followed.
    if (work) {
      const row = link.closest(".row[data-part]")?.dataset.part;
      const links = row ? `.row[data-part="${CSS.escape(row)}"] a` : "a";
      next = () => [...(ours()?.querySelectorAll(links) ?? [])].find(a => a.textContent === link.textContent)?.click();
      return;
    }
    show(link.closest(".turn") ? to.pathname + to.search : looked(to.pathname + to.search));
  }, true);

  addEventListener("popstate", event => {
    if (!ours() || !samePage(location.pathname)) return;
    event.stopImmediatePropagation();
    if (location.pathname + location.search !== shown) show(location.pathname + location.search, { push: false });
  }, true);

  document.addEventListener("answer:ask", event => show(looked(event.detail)));

  // Undo: the link in the line, or the keys for it.
  did.addEventListener("click", event => {
    const undo = event.target.closest("a");
    if (!undo) return;
    event.preventDefault();
    show(new URL(undo.href).pathname + new URL(undo.href).search);
  });
  document.addEventListener("keydown", event => {
    if (event.key.toLowerCase() !== "z" || !(event.ctrlKey || event.metaKey) || event.shiftKey || event.target.matches?.("input, textarea, select")) return;
    const undo = document.querySelector("[data-alive] [data-undo]");
    if (!undo) return;
    event.preventDefault();
    undo.click();
  });

  stop.addEventListener("click", () => work?.abort());
  up.addEventListener("click", event => {
    event.preventDefault();
    wordOf().scrollIntoView({ block: "center" });
    focusOn(["[data-alive] .word, [data-alive] .verdict"]);
  });
  document.body.append(line);
  watch();
})();
