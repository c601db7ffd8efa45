
'use strict';
(function () {
  var begin = null;
  var counting = 'First brush now (counting; press to count anew)';
  var button = document.getElementById('begin');
  var spoken = document.getElementById('spoken');
  var marks = Array.prototype.slice.call(document.querySelectorAll('[data-minute]'));
  var ticks = Array.prototype.slice.call(document.querySelectorAll('.times input'));
  // What the page asks to be done, as one number: ticks of another plan are not taken for its own.
  var plan = marks.reduce(function (sum, mark) {
    var text = mark.getAttribute('data-minute') + mark.getAttribute('data-what');
    for (var i = 0; i < text.length; i += 1) { sum = (sum * 31 + text.charCodeAt(i)) % 2147483647; }
    return sum;
  }, 7);
  // Kept with this tab alone, for a reload: which ticks are set and when it began. Nothing of the guest, and no storage.
  function keep() {
    var set = ticks.map(function (tick) { return tick.checked ? 1 : 0; });
    try { history.replaceState({ plan: plan, ticks: set, begin: begin, at: Date.now() }, ''); } catch (refused) { return; }
  }
  function back() {
    var kept = history.state;
    if (!kept || kept.plan !== plan || !Array.isArray(kept.ticks) || kept.ticks.length !== ticks.length) { return; }
    if (!(Date.now() - kept.at < 43200000)) { return; }
    ticks.forEach(function (tick, place) { tick.checked = kept.ticks[place] === 1; });
    if (typeof kept.begin === 'number') { begin = kept.begin; }
  }
  function show() {
    if (begin === null) { return; }
    var gone = (Date.now() - begin) / 60000;
    var due = [];
    marks.forEach(function (mark) {
      var left = Math.round(Number(mark.getAttribute('data-minute')) - gone);
      var place = mark.querySelector('.left');
      if (!place) { return; }
      var done = mark.querySelector('input');
      if (done && done.checked) { place.textContent = ''; return; }
      place.textContent = left > 0 ? 'in ' + left + ' min' : left < 0 ? -left + ' min ago' : 'now';
      if (left === 0) { due.push(mark.getAttribute('data-what')); }
    });
    var text = due.length ? due.join('; ') + ': now' : '';
    if (spoken.textContent !== text) { spoken.textContent = text; }
  }
  if (button) {
    button.hidden = false;
    back();
    if (begin !== null) { button.textContent = counting; show(); }
    ticks.forEach(function (tick) { tick.addEventListener('change', function () { keep(); show(); }); });
    button.addEventListener('click', function () {
      begin = Date.now();
      button.textContent = counting;
      spoken.textContent = '';
      show();
      keep();
    });
    setInterval(show, 5000);
  }
}());
