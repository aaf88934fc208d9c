// The parts of the answered hat: a tap on hat, piece or row opens the part's menu, arrow keys step through the parts, and wool is dragged from one to
// another. The page is complete without it: every menu is a link, every act in it too.
(() => {
  const page = () => document.querySelector(".can-i-make");
  const rows = () => [...document.querySelectorAll(".can-i-make .row[data-part]")];
  const rowOf = part => document.querySelector(`.can-i-make .row[data-part="${CSS.escape(part)}"]`);
  const light = part => document.dispatchEvent(new CustomEvent("part:keep", { detail: part }));
  const ask = address => document.dispatchEvent(new CustomEvent("answer:ask", { detail: address }));
  let opener = null, loading = null;

  // The menu.
  function close(focus = true) {
    loading?.abort();
    const menu = document.querySelector(".can-i-make .menu");
    if (!menu) return;
    menu.remove();
    light(null);
    if (focus && opener?.isConnected) opener.focus({ preventScroll: true });
    opener = null;
  }

  async function open(part, address, at = null, from = null) {
    close(false);
    light(part);
    const mine = loading = new AbortController();
    let menu;
    try {
      const response = await fetch(address, { signal: mine.signal, headers: { accept: "text/html" }, credentials: "same-origin" });
      menu = new DOMParser().parseFromString(await response.text(), "text/html").querySelector(".menu");
    } catch { return; }
    if (loading !== mine || !menu) { if (!menu) location.assign(address); return; }
    const place = at ? document.querySelector(".hat-stage") : rowOf(part);
    if (!place) return;
    opener = from ?? rowOf(part)?.querySelector(".dots");
    place.append(document.adoptNode(menu));
    if (at) {
      const box = place.getBoundingClientRect();
      menu.classList.add("at-hat");
      menu.style.left = Math.max(0, Math.min(at.x - box.left + 12, box.width - menu.offsetWidth)) + "px";
      menu.style.top = Math.max(8 - box.top, Math.min(at.y - box.top + 14, innerHeight - 8 - menu.offsetHeight - box.top)) + "px";
    }
    menu.querySelector("a.act, select")?.focus({ preventScroll: true });
    if (!at && matchMedia("(min-width: 44.01rem)").matches) menu.scrollIntoView({ block: "nearest" });
  }

  const partAt = element => element instanceof Element ? element.closest(".can-i-make :is(.areas a, .piece .part, .alone .part, .row)")?.dataset.part ?? null : null;

  document.addEventListener("click", event => {
    if (!(event.target instanceof Element) || !page()?.contains(event.target)) return;
    if (event.target.closest(".menu .shut")) { event.preventDefault(); event.stopImmediatePropagation(); close(); return; }
    if (event.target.closest(".menu")) return;
    const hat = event.target.closest(".areas a, .piece .part, .alone .part");
    const dots = event.target.closest(".dots") ?? (event.target.closest(".row") && !event.target.closest("a, button, select") ? event.target.closest(".row").querySelector(".dots") : null);
    if (event.button || event.ctrlKey || event.metaKey || event.shiftKey || !(hat || dots)) { close(false); return; }
    event.preventDefault();
    event.stopImmediatePropagation();
    const part = partAt(event.target);
    const address = rowOf(part)?.querySelector(".dots")?.href.split("#")[0];
    if (address) open(part, address, hat && !hat.closest(".piece") ? { x: event.clientX, y: event.clientY } : null, hat?.closest(".pic") ?? null);
  }, true);

  document.addEventListener("answer:new", () => { opener = null; dress(); });

  // Keys: in the hat and along the rows.
  function dress() {
    const pic = document.querySelector(".can-i-make .pic");
    if (!pic || !rows().length) return;
    pic.tabIndex = 0;
    pic.setAttribute("role", "slider");
    pic.setAttribute("aria-label", "The hat");
    pic.setAttribute("aria-valuemin", "0");
    pic.setAttribute("aria-valuemax", rows().length);
    point(pic, 0);
  }
  function point(pic, number) {
    pic.setAttribute("aria-valuenow", number);
    pic.setAttribute("aria-valuetext", number ? rows()[number - 1].dataset.told : "no part chosen");
    light(number ? rows()[number - 1].dataset.part : null);
  }
  document.addEventListener("keydown", event => {
    if (event.key === "Escape" && document.querySelector(".can-i-make .menu")) { event.preventDefault(); close(); return; }
    if (!(event.target instanceof Element) || event.ctrlKey || event.altKey || event.metaKey) return;
    const step = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 }[event.key];
    const pic = event.target.closest(".can-i-make .pic");
    if (pic) {
      const now = +pic.getAttribute("aria-valuenow"), most = rows().length;
      if (step || event.key === "Home" || event.key === "End") {
        event.preventDefault();
        point(pic, event.key === "Home" ? 1 : event.key === "End" ? most : (now + step + most + 1) % (most + 1));
      } else if (now && (event.key === "Enter" || event.key === " ")) {
        event.preventDefault();
        const row = rows()[now - 1], box = pic.getBoundingClientRect();
        open(row.dataset.part, row.querySelector(".dots").href.split("#")[0], { x: box.left + box.width / 2, y: box.top + box.height / 2 }, pic);
      }
      return;
    }
    if (!step) return;
    const items = event.target.closest(".menu") ? [...document.querySelectorAll(".can-i-make .menu :is(a.act, select)")] : event.target.matches(".row .dots") ? rows().map(r => r.querySelector(".dots")) : null;
    if (!items || event.target.matches("select")) return;
    event.preventDefault();
    items[(items.indexOf(event.target) + step + items.length) % items.length]?.focus();
  });

  // Dragging: a leftover onto a part, or a part's yarn onto another part, which gets the other's in return.
  const from = element => {
    const yarn = element.closest("[data-yarn]");
    if (yarn) return { yarn: yarn.dataset.yarn, part: yarn.dataset.of ?? null, code: (yarn.matches(".code") ? yarn : yarn.querySelector(".code")) };
    const part = partAt(element), code = part && rowOf(part)?.querySelector(".code[data-yarn]");
    return code ? { yarn: code.dataset.yarn, part: code.dataset.of, code } : null;
  };
  const onto = (x, y) => {
    const under = document.elementFromPoint(x, y);
    const code = under?.closest(".row .code[data-of]");
    if (code) return { part: code.dataset.of, row: code.closest(".row").dataset.part, yarn: code.dataset.yarn };
    const row = partAt(under), first = row && rowOf(row);
    return first ? { part: first.dataset.parts.split("|")[0], row, yarn: first.querySelector(".code[data-of]")?.dataset.yarn ?? null } : null;
  };
  let held = null, ghost = null, press = 0, started = null;

  const mark = row => document.querySelectorAll(".can-i-make :is(.row, .areas a)").forEach(e => e.classList.toggle("over", !!row && e.dataset.part === row));
  function lift(x, y) {
    clearTimeout(press);
    ghost = document.createElement("div");
    ghost.className = "carried";
    ghost.textContent = held.code?.textContent ?? "";
    ghost.style.setProperty("--y", held.code ? getComputedStyle(held.code).getPropertyValue("--y") : "currentColor");
    document.body.append(ghost);
    document.documentElement.classList.add("carrying");
    navigator.vibrate?.(12);
    move(x, y);
  }
  function move(x, y) {
    ghost.style.transform = `translate(${x + 8}px, ${y + 10}px)`;
    const over = onto(x, y);
    mark(over && over.part !== held.part ? over.row : null);
  }
  function drop(x, y) {
    const target = onto(x, y), what = held;
    end();
    if (!target || target.part === what.part || target.yarn === what.yarn) return;
    const asked = new URL(page().dataset.address, location.origin);
    const pairs = asked.searchParams;
    const [locks, back, never, like] = page().dataset.names.split(" ");
    const say = (part, yarn) => [part, yarn].map(t => t.replaceAll("%", "%25").replaceAll("~", "%7E")).join("~");
    const set = (name, values) => { pairs.delete(name); for (const value of values) pairs.append(name, value); };
    const swaps = what.part && target.yarn;
    set(locks, [...pairs.getAll(locks).filter(k => ![target.part, what.part].includes(k.split("~")[0])), say(target.part, what.yarn), ...(swaps ? [say(what.part, target.yarn)] : [])]);
    set(back, pairs.getAll(back).filter(b => b !== what.yarn));
    set(never, pairs.getAll(never).filter(n => n !== say(target.part, what.yarn) && !(swaps && n === say(what.part, target.yarn))));
    set(like, [...document.querySelectorAll(".can-i-make .row .code[data-of]")].map(code => say(code.dataset.of, code.dataset.yarn)));
    pairs.delete("share");
    if (page().dataset.stripes) pairs.set("stripes", page().dataset.stripes);
    ask(asked.pathname + "?" + pairs);
  }
  function end() {
    clearTimeout(press);
    ghost?.remove();
    mark(null);
    document.documentElement.classList.remove("carrying");
    held = ghost = started = null;
  }

  document.addEventListener("pointerdown", event => {
    if (event.button || !(event.target instanceof Element) || !page()?.contains(event.target) || event.target.closest(".menu, .dots, .turn, button, select, input, summary")) return;
    held = from(event.target);
    if (!held) return;
    started = { x: event.clientX, y: event.clientY, touch: event.pointerType === "touch" };
    if (started.touch) press = setTimeout(() => held && lift(started.x, started.y), 350);
  });
  document.addEventListener("pointermove", event => {
    if (!held) return;
    const far = Math.hypot(event.clientX - started.x, event.clientY - started.y);
    if (ghost) { event.preventDefault(); move(event.clientX, event.clientY); }
    else if (started.touch ? far > 10 : far > 6) { if (started.touch) end(); else lift(event.clientX, event.clientY); }
  });
  document.addEventListener("pointerup", event => {
    if (!ghost) { end(); return; }

    // The click that follows a drop is none.
    const none = e => { e.preventDefault(); e.stopImmediatePropagation(); };
    addEventListener("click", none, true);
    setTimeout(() => removeEventListener("click", none, true), 0);
    drop(event.clientX, event.clientY);
  });
  document.addEventListener("pointercancel", end);
  document.addEventListener("touchmove", event => { if (ghost) event.preventDefault(); }, { passive: false });
  document.addEventListener("contextmenu", event => { if (started?.touch) event.preventDefault(); });
  document.addEventListener("dragstart", event => { if (event.target instanceof Element && event.target.closest(".can-i-make :is(.pic, .row, .piece, .unused)")) event.preventDefault(); });
  addEventListener("keydown", event => { if (event.key === "Escape" && held) end(); });

  // "5 more ways" opens its fold; the fold for what is asked more rarely closes when something else is pressed.
  document.addEventListener("click", event => {
    const link = event.target instanceof Element ? event.target.closest("[data-opens]") : null;
    const fold = link && document.getElementById(link.dataset.opens);
    if (fold) {
      event.preventDefault();
      fold.open = true;
      fold.scrollIntoView({ block: "start" });
      fold.querySelector("summary").focus({ preventScroll: true });
    }
    const more = document.querySelector(".can-i-make .more[open]");
    if (more && !more.closest(".ask").contains(event.target) && matchMedia("(min-width: 44.01rem)").matches) more.open = false;
  });

  dress();
})();
