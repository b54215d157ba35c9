/**
 * Starts the page: makes the store, mounts every panel, follows and writes the address.
 *
 * Ids and data attributes that stay put, for tests and for linking:
 *   #inputs            #route-choice, #rig-choice, #stance-choice, #margin-ground, #margin-overhead, #margins-apply,
 *                      #route-file, #rig-file (file inputs)
 *   #limits            [data-force=file|route|federal]; #limits-file (file input), #limits-save, #limits-remove,
 *                      #limits-edit (details) with #limits-form: [data-path] fields, .limits-said[data-at],
 *                      #limits-add-KEY, #limits-put, #limits-again, #limits-said
 *   #projects          [data-status]; #project-name, #project-status, #project-list li[data-project] .project-open and
 *                      .project-remove, #project-find, #project-order, #project-removed, #project-rename,
 *                      #project-remove,
 *                      #project-begin (a form: #project-new, #project-author), #project-close, #project-revisions,
 *                      #revision-list li[data-revision] .revision-look, #project-restore, #project-latest,
 *                      #project-theirs, #project-on-top, #project-copy
 *   #verify            [data-status][data-identical]; #verify-file (file input), #verify-outcome, #verify-stop,
 *                      #verify-table; #paper-list .paper-verify
 *   #merge             #merge-table tr[data-id][data-by] with two radios, #merge-put, #merge-again, #merge-left
 *   #import            [data-status=none|reading|ready|failed|stopped]; #import-files (file input), #import-update,
 *                      #import-crs, #import-list, #import-status, #import-stop, #import-again, #import-keep,
 *                      #import-save, #import-discard, #import-map, #import-notes li[data-done][data-code],
 *                      #import-counts, #import-attribution,
 *                      #import-candidates tbody tr[data-id][data-status][data-doubtful]
 *   #revisions         #route-save, #rig-save, #route-undo, #route-redo; #dropping while files are held over the page
 *   #left-work         #left-work-take, #left-work-forget: changes in no project that this browser kept
 *   #display           input[name=units][value=us|metric], #theme (system|light|dark), #print,
 *                      #print-note (on paper: what is not on it)
 *   #checking          #checking-words, #checking-found li[data-hazard][data-clear]: while a check runs
 *   #busy, #notice     status lines; #problem [data-status], .problem-item [data-pointer] [data-code], #problem-retry,
 *                      #problem-dismiss
 *   #sections          a[data-part]: the parts of the sheet, to go to
 *   #answer            [data-status][data-outcome]: how the plan ends, also in the title of the tab
 *   #plan              #plan-map, .plan-hazard[data-hazard][data-verdict], .plan-stop[data-stop]
 *   #profile           .profile-hazard[data-hazard][data-verdict][data-blocked], .profile-stop[data-stop],
 *                      .strip-bar[data-configuration], #stations-out, #stations-in, #stations-back, #stations-on,
 *                      #stations-all, #stations-shown
 *   #hazards           #configuration-lift, #configuration-booster, #configuration-notch (selects),
 *                      #route-verdict[data-configuration][data-verdict],
 *                      #list-only, #list-kind (selects), #list-shown, th[data-sort][aria-sort] .sort,
 *                      #hazard-table tbody tr[data-hazard][data-verdict][data-value-m] with button.hazard-open
 *   #survey-first      #survey-table tr[data-hazard][data-rank] with button.survey-open,
 *                      .hump-ladder[data-tracks] td[data-clear-m][data-contact-m]
 *   #title-block       dd[data-field=route|rig|stance|configuration|margins|version|route-sha256|rig-sha256]
 *   #detail            [data-hazard] [data-configuration]; #detail-title, #detail-before, #detail-after,
 *                      #matrix button[data-configuration][data-configurations][data-verdict][data-value-m],
 *                      #result[data-verdict], #result [data-side=ground|overhead] with .result-value[data-value-m]
 *                      [data-required-m], #raise[data-front-m][data-rear-m]
 *   passage            #passage[data-status=none|loading|ready|failed], #passage-slider[data-index][data-steer-m],
 *                      #passage-clearance[data-value-m], #passage-overhead[data-value-m],
 *                      #passage-position[data-steer-m], #passage-wheels, #passage-line, #passage-leveling,
 *                      #passage-exaggeration, #passage-raise (aria-pressed), #passage-tightest, #passage-back,
 *                      #passage-forward, #passage-live (live region), #side-view, #detail-view, #clearance-curve
 *   #what-if           [data-status=none|outdated|checked]; #what-if-words, #what-if-keep, #what-if-drop;
 *                      #sheets[data-outdated], #loads[data-outdated] while what they say is of the load elsewhere
 *   #loads             [data-status] [data-verdict]; #loads-hazard, #load-view .piece-handle[data-piece][data-shift],
 *                      #load-axles tr[data-axle][data-load-kg], #load-groups tr[data-group][data-verdict],
 *                      #load-position, #load-regulator (plots), #piece-choice, #piece-at, #piece-typed,
 *                      #piece-refused, #piece-said, #piece-ahead, #piece-astern, #piece-back, #regulator-set,
 *                      #reading-trailer, #reading-booster, #readings-apply, #load-readings li[data-gauge][data-agrees],
 *                      #load-advice tr[data-from][data-booster][data-text]
 *   #route-plan        [data-status=none|loading|ready|failed|stopped][data-outcome]; #plan-outcome, #plan-figures
 *                      [data-seconds][data-changes], #plan-steps li[data-step][data-hazard][data-stop][data-blocked],
 *                      .step-open, .strip-legend li[data-configuration], #stop-facts,
 *                      #plan-conditions li[data-hazard][data-what], #plan-blocking li[data-hazard] with .plan-accept
 *                      and .plan-aside, .plan-undo, #plan-keep, #plan-no-raising, input[name=forbid], #plan-time-KEY,
 *                      #plan-apply, #plan-stop-asking, #crossing-table, #robustness-table
 *   #papers            [data-outcome]; #runsheet-open, #runsheet-pdf, #statement-open, #statement-pdf, #paper-size,
 *                      #sheet-language, #runsheet-cab, #runsheet-cab-link, #runsheet-cab-file,
 *                      #runsheet-link, #statement-link (once made)
 *   #comparison        [data-status]; #configuration-table tbody tr[data-configuration][data-verdict][data-outcome]
 *                      with input[name=configuration] and input[name=pick], th[data-sort][aria-sort] .sort,
 *                      #margin-plot .margin-place[data-hazard][data-kind][data-pick], #margin-table, #difference-table,
 *                      #combinations[data-status]; #combinations-compare, #combinations-stop,
 *                      #combination-table tr[data-stance][data-outcome] .combination-show, #combination-loads
 *   #candidates        #candidates-count, #candidate-table tr[data-id][data-state] with .candidate-dismiss (a form: by,
 *                      why) or .candidate-open
 *   #places            #place-edit (details); #place-add (a form: #place-kind, name, at, landmark, more), #place-pick,
 *                      #place-said, #place-table tr[data-id] with .place-change (a form: name, landmark, at) and
 *                      .place-remove
 *   #line              [data-mode=off|points|on|new][data-refused]; #line-edit (details); .line-mode[data-mode],
 *                      #line-point, #line-number, #line-step, .line-nudge[data-toward], #line-insert, #line-remove,
 *                      #line-typed (a form: coordinates, bearing, distance), #line-name, #line-finish, #line-undraw,
 *                      #line-cut, #line-reverse (forms), #line-file, #line-asked with #line-goes li, #line-do,
 *                      #line-leave,
 *                      #line-said, #line-refused p, #line-told li; on the map .line-handle[data-point],
 *                      .line-between[data-point]
 *   #survey            in #detail: [data-status=same|changed|sent|unread|refused|unsent]; #survey-edit (details),
 *                      #survey-rows input[data-cell="row,column"], .survey-problem[data-at], .survey-row-add,
 *                      .survey-row-remove, #survey-add, #survey-order, #survey-clear, #survey-reset,
 *                      #survey-FIELD, #survey-unit-distance, #survey-unit-height, #survey-said, #survey-answer
 *                      [data-verdict], #survey-view; #survey-notes (details): #notes-FIELD, #notes-rows
 *                      input[data-note="row,column"], #notes-outcome, #notes-take
 *   #corner-form       in #detail: [data-status] as #survey; #corner-edit (details), #corner-layout, [data-path]
 *                      fields, [data-lent], #corner-add, #corner-form-reset, .survey-problem[data-at],
 *                      #corner-form-answer[data-verdict], #corner-template .template-dim[data-path]
 *   #corner-outline    in #detail: #outline-edit (details), #outline-kind, #outline-draw (aria-pressed),
 *                      #outline-typed, #outline-shape (forms), #outline-count, #outline-list li
 *   #rig               #rig-edit (details); #rig-changes (details) with #rig-begin (a form: source, name, bare) and
 *                      #rig-change (a form: #rig-change-kind, fields by key), #rig-change-said; #rig-tickets (details)
 *                      with #rig-tickets-form, #rig-tickets-outcome, #rig-tickets-put;
 *                      #rig-stance, #rig-state with #rig-give-up and #rig-again,
 *                      .rig-part[data-part] tr[data-place] with .rig-input[data-row] and .rig-said[data-pointer],
 *                      #rig-side and #rig-above .tape-dim[data-row]
 *   #notes             #not-checked li[data-hazard], #uncertainties, #cautions
 * A missing number leaves its data-value-m out. <html data-units data-theme> tell the display in force.
 */
import { createApi } from './exchange/api.js';
import { createActions } from './page/actions.js';
import { decode, encode } from './page/address.js';
import { initialState, createStore } from './page/state.js';
import { recall, recallAuthor, remember, rememberAuthor } from './page/preferences.js';
import { mountDisplay } from './panels/page/display.js';
import { mountInputs } from './panels/page/inputs.js';
import { mountProblem } from './panels/parts/problem.js';
import { mountChecking } from './panels/page/checking.js';
import { mountAnswer } from './panels/plan/answer.js';
import { mountMap } from './panels/map/map.js';
import { mountSurveyFirst } from './panels/survey/surveyfirst.js';
import { mountStations } from './panels/strip/stations.js';
import { mountHazards } from './panels/hazard/hazards.js';
import { mountTitleBlock } from './panels/page/titleblock.js';
import { mountDetail } from './panels/hazard/detail.js';
import { mountSections } from './panels/page/sections.js';
import { mountComparison } from './panels/compare/comparison.js';
import { mountCandidates } from './panels/import/candidates.js';
import { mountNotes } from './panels/page/notes.js';
import { mountLoads } from './panels/loads/loads.js';
import { mountRoutePlan } from './panels/plan/routeplan.js';
import { mountImporting } from './panels/import/importing.js';
import { mountWhatIf } from './panels/loads/whatif.js';
import { mountLeftWork } from './panels/project/leftwork.js';
import { mountRevisions } from './panels/project/revisions.js';
import { mountDropping } from './panels/page/dropping.js';
import { createImportActions } from './import/importing.js';
import { createUndoing } from './project/undoing.js';
import { createHistoryKeeping } from './project/historykeeping.js';
import { storageOf } from './cab/keeping.js';
import { createMoving } from './rig/moving.js';
import { createMerging } from './merge/merging.js';
import { createVerifying } from './project/verifying.js';
import { mountVerifying } from './panels/project/verifying.js';
import { mountMerging } from './panels/project/merging.js';
import { movedWords } from './rig/piecewords.js';
import { createPlaceActions } from './line/placeactions.js';
import { createOutlineActions } from './corner/outlineactions.js';
import { createCornerActions } from './corner/corneractions.js';
import { createLimitsActions } from './limits/limitsactions.js';
import { createLineActions } from './line/lineactions.js';
import { createLinePartActions } from './line/linepartactions.js';
import { createSurveyActions } from './survey/surveyactions.js';
import { createRigActions } from './rig/rigactions.js';
import { createProjectActions } from './project/projects.js';
import { mountLimits } from './panels/loads/limits.js';
import { mountLine } from './panels/line/line.js';
import { mountPlaces } from './panels/line/places.js';
import { mountRig } from './panels/rig/rig.js';
import { mountProjects } from './panels/project/projects.js';
import { createLoadActions } from './page/loadactions.js';
import { createPlanActions } from './page/planactions.js';

const store = createStore({ ...initialState(), ...recall(window), author: recallAuthor(window) });
const api = createApi(window.fetch.bind(window));
const checking = createActions(store, api);
const undoing = createUndoing(store, checking.openRead);
const limits = createLimitsActions(store, undoing);
const importing = createImportActions(store, api, checking.openRead, undoing, limits.openLimits);
const loading = createLoadActions(store, api);
const moving = createMoving(store, {
  undoing, open: checking.openRead, drawLoads: loading.drawLoads,
  told: shift => movedWords(shift, store.get().units),
});
const lineActions = createLineActions(store, importing.changeRoute, undoing);
const actions = {
  ...checking, ...loading, ...createPlanActions(store, api), ...importing, ...undoing.actions, ...moving, ...limits,
  ...createPlaceActions(store, importing.changeRoute), ...createRigActions(store, api, undoing),
  ...createProjectActions(store, api, checking),
  ...lineActions, ...createLinePartActions(store, lineActions),
  ...createCornerActions(store, importing.changeRoute),
  ...createOutlineActions(store, importing.changeRoute, lineActions),
  ...createSurveyActions(store, importing.changeRoute),
};
Object.assign(actions, createVerifying(store, api, actions.takeFiles));
Object.assign(actions, createMerging(store, api, actions, checking.check));
const history = createHistoryKeeping(store, storageOf(window), actions);
Object.assign(actions, { takeUp: history.takeUp, forgetLeft: history.forgetLeft });
const page = id => document.getElementById(id);

store.watch(['units', 'theme'], state => {
  document.documentElement.dataset.units = state.units;
  document.documentElement.dataset.theme = state.theme;
  remember(window, state);
});
store.watch(['author'], ({ author }) => rememberAuthor(window, author));
store.watch(['report'], state => {
  page('sheets').hidden = state.report === null;
});

// First of all that listen: what is drawn for paper is drawn in the layout of paper.
window.addEventListener('beforeprint', () => document.documentElement.classList.add('printing'));
window.addEventListener('afterprint', () => document.documentElement.classList.remove('printing'));

// A page that was left may live on out of sight: what it asked for is of no use to anybody then.
let left = false;
window.addEventListener('pagehide', () => {
  history.writeHistory();
  left = store.get().busy;
  actions.stopCheck();
  actions.stopPlan();
  actions.stopComparison();
});
window.addEventListener('pageshow', event => {
  if (event.persisted && left) {
    actions.retry();
  }
});

const panels = [
  ['display', mountDisplay],
  ['projects', mountProjects],
  ['merge', mountMerging],
  ['inputs', mountInputs],
  ['limits', mountLimits],
  ['import', mountImporting],
  ['verify', mountVerifying],
  ['revisions', mountRevisions],
  ['left-work', mountLeftWork],
  ['what-if', mountWhatIf],
  ['dropping', mountDropping],
  ['checking', mountChecking],
  ['problem', mountProblem],
  ['answer', mountAnswer],
  ['sections', mountSections],
  ['plan', mountMap],
  ['profile', mountStations],
  ['hazards', mountHazards],
  ['title-block', mountTitleBlock],
  ['survey-first', mountSurveyFirst],
  ['route-plan', mountRoutePlan],
  ['detail', mountDetail],
  ['loads', mountLoads],
  ['comparison', mountComparison],
  ['candidates', mountCandidates],
  ['line', mountLine],
  ['places', mountPlaces],
  ['rig', mountRig],
  ['notes', mountNotes],
];
for (const [id, mount] of panels) {
  mount(page(id), { store, actions });
}

document.querySelector('.skip').addEventListener('click', event => {
  event.preventDefault();
  page(event.currentTarget.dataset.focus).focus();
});

store.watch(['plan'], ({ plan }) => actions.openOnPlan(plan));
followAddress();
start();

async function start() {
  const about = actions.loadAbout();
  const wanted = decode(window.location.hash);
  if (wanted.project === null) {
    const isLeft = wanted.work !== null && await history.takeUp(wanted.work, wanted);
    if (isLeft) {
      actions.loadSamples();
    } else {
      actions.openSamples(wanted);
      history.offerLeft();
    }
  } else {
    openLinked(wanted);
  }
  await about;
  if (store.get().settings?.projects) {
    actions.loadProjects();
  }
}

/** A project by its address: as it was saved, or as the address says when it says more. */
function openLinked(wanted) {
  const alone = window.location.hash === encode({ ...initialState(), project: { id: wanted.project } });
  return actions.openProject(wanted.project, null, alone ? null : wanted);
}

/** The address follows the selection; a fragment put in by hand or by Back is followed in turn. */
function followAddress() {
  let timer = 0;
  let followed = window.location.hash;
  const write = () => {
    // One that was put there meanwhile is about to be followed.
    if (store.get().report !== null && window.location.hash === followed) {
      window.history.replaceState(null, '', encode(store.get()) || window.location.pathname);
      followed = window.location.hash;
    }
  };
  const written = [
    'inputs', 'hazard', 'configuration', 'view', 'passage', 'position', 'planAsked', 'picks', 'stop', 'project',
    'listing', 'work',
  ];
  store.watch(written, () => {
    clearTimeout(timer);
    timer = setTimeout(write, 200);
  });
  window.addEventListener('hashchange', () => {
    clearTimeout(timer);
    followed = window.location.hash;
    const wanted = decode(followed);
    const open = store.get().project?.id ?? null;
    if (wanted.project !== null && wanted.project !== open) {
      openLinked(wanted);
    } else {
      if (wanted.project !== open) {
        actions.closeProject();
      }
      actions.follow(wanted);
    }
  });
}
