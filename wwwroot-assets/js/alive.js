// The answer in place. A change in the question, or a link to another answer on the same page, fetches that very page and puts its
// answer where the old one is: the address, the focus and the place on the screen stay true, long work can be stopped, and where
// the line is cut the old answer stays. Without scripts the same form and links load the page.
(() => {
  const ours = () => document.querySelector("[data-alive]");
  const asks = form => form instanceof HTMLFormElement && form.method === "get" && form.closest("[data-alive]") ? form : null;
  const samePage = path => path === location.pathname || (["/", "/can-i-make"].includes(path) && ["/", "/can-i-make"].includes(location.pathname));

  const line = document.createElement("section");
  line.className = "now";
  line.setAttribute("aria-label", "The answer now");
  line.hidden = true;
  line.innerHTML = '<p role="status"></p><button type="button" class="quiet" hidden>stop</button><a class="button quiet" href="#" hidden>to the answer</a>';
  const [words, stop, up] = line.children;
  let shown = location.pathname + location.search;
  let work = null, slow = 0, typing = 0, said = "", seen = null, next = null;

  const say = text => {
    if (!line.isConnected) document.body.append(line);
    words.textContent = said = text;
    line.hidden = !text;
  };
  const idle = () => {
    clearTimeout(slow);
    work = null;
    stop.hidden = true;
    up.hidden = !document.querySelector("[data-alive] .verdict");
    document.documentElement.classList.remove("working");
  };

  // What the address of a form would be; a change of hat lets go of what was decided about the parts of the old one.
  const addressOf = (form, changed) => {
    const pairs = [...new FormData(form)].filter(([, value]) => value !== "");
    const gone = { hat: ["stripes", "keep", "never", "depths", "without", "apart", "brimDepth", "bindOff", "inTurn"], size: ["depths"], stripes: ["depths", "without", "apart", "inTurn"], arrangement: ["inTurn"] }[changed] ?? [];
    return new URL(form.action).pathname + "?" + new URLSearchParams(pairs.filter(([name]) => !gone.includes(name)));
  };

  // How to find again what has the focus: the row of its part, its id, its name and value, or else the answer's word.
  const mark = element => {
    if (!element || !ours()?.contains(element)) return null;
    const row = element.closest("tr[data-part]");
    if (row) return ["select", "a"].map(what => `tr[data-part="${CSS.escape(row.dataset.part)}"] ${what}`);
    if (element.id) return ["#" + CSS.escape(element.id)];
    if (element.name) return [`[name="${CSS.escape(element.name)}"][value="${CSS.escape(element.value)}"]`, "[data-alive] summary"];
    return ["[data-alive] .verdict"];
  };
  const focusOn = places => {
    const to = places?.map(place => document.querySelector(place)).find(found => found);
    if (!to) return;
    if (!to.matches("a, button, input, select, summary")) to.tabIndex = -1;
    to.focus({ preventScroll: true });
    return to;
  };

  async function show(address, { push = true, form = null, sent = "" } = {}) {
    work?.abort();
    clearTimeout(slow);
    const mine = work = new AbortController();
    mine.ofForm = !!form;
    const old = said;
    slow = setTimeout(() => {
      if (work !== mine) return;
      say("Working it out.");
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
      say(error.name === "AbortError" ? "Stopped. The answer is still the one from before." : "StashMatch does not answer. The answer is still the one from before.");
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
    const open = [...here.querySelectorAll("details[open]")].map(d => d.className + "|" + d.parentElement?.className);
    here.replaceChildren(...document.adoptNode(fresh).childNodes);
    for (const d of here.querySelectorAll("details")) if (open.includes(d.className + "|" + d.parentElement?.className)) d.open = true;
    document.title = page.title;
    if (push) history.pushState(null, "", address);
    shown = location.pathname + location.search;
    const to = focusOn(place);
    if (from != null && to?.matches("input[inputmode]")) to.setSelectionRange(from, until);
    if (to && !to.matches(".verdict")) scrollBy({ top: to.getBoundingClientRect().top - top, behavior: "instant" });
    document.dispatchEvent(new Event("answered"));
    idle();
    say(ours().querySelector("[data-says]")?.dataset.says ?? ours().querySelector("[role=alert], .cannot .lead")?.textContent ?? "");
    watch();
    const then = next;
    next = null;
    then?.();
  }

  // The line is shown while the answer itself is out of sight.
  function watch() {
    seen?.disconnect();
    line.classList.remove("in-sight");
    const verdict = document.querySelector("[data-alive] .verdict");
    if (!verdict) return;
    seen = new IntersectionObserver(([entry]) => line.classList.toggle("in-sight", entry.isIntersecting && !work));
    seen.observe(verdict);
  }

  const changed = event => {
    const form = asks(event.target.form);
    if (!form || form.dataset.ask !== "change") return;
    clearTimeout(typing);

    // Between a link and its answer the form is of the old question: the change waits for the new one.
    if (work && !work.ofForm) {
      const { name, value, checked, type } = event.target;
      next = () => {
        const field = [...(ours()?.querySelectorAll(`[data-ask] [name="${CSS.escape(name)}"]`) ?? [])].find(f => !["checkbox", "radio"].includes(type) || f.value === value);
        if (!field) return;
        if (["checkbox", "radio"].includes(type)) field.checked = checked; else field.value = value;
        field.dispatchEvent(new Event("change", { bubbles: true }));
      };
      return;
    }
    const send = () => { const sent = addressOf(form); show(addressOf(form, event.target.name), { form, sent }); };
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
    if (!link || event.button || event.ctrlKey || event.metaKey || event.shiftKey || event.altKey || link.hasAttribute("download") || link.target) return;
    const to = new URL(link.href);
    if (to.origin !== location.origin || !samePage(to.pathname) || !to.search || to.hash) return;
    event.preventDefault();
    event.stopPropagation();

    // Before a change has its answer a link is of the old question: the same link of the new one is followed.
    if (work) {
      const row = link.closest("tr[data-part]")?.dataset.part;
      next = () => [...(ours()?.querySelectorAll(row ? `tr[data-part="${CSS.escape(row)}"] a` : "a") ?? [])].find(a => a.textContent === link.textContent)?.click();
      return;
    }
    show(to.pathname + to.search);
  }, true);

  addEventListener("popstate", event => {
    if (!ours() || !samePage(location.pathname)) return;
    event.stopImmediatePropagation();
    if (location.pathname + location.search !== shown) show(location.pathname + location.search, { push: false });
  }, true);

  stop.addEventListener("click", () => work?.abort());
  up.addEventListener("click", event => {
    event.preventDefault();
    const verdict = document.querySelector("[data-alive] .verdict");
    verdict.scrollIntoView({ block: "center" });
    focusOn(["[data-alive] .verdict"]);
  });
  document.body.append(line);
})();
