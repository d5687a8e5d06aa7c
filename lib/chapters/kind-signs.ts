/**
 * What teachers say in which kind of chapter. Wordings are our own gathering
 * of how lessons at the bench are spoken (common practice); `nats` says how
 * much one tells. Texts are matched in small letters, words parted by single
 * spaces, with a space at both ends and no full stops.
 */
import type { ChapterKind } from './chapter.ts';

export interface KindSign {
  readonly kind: ChapterKind;
  readonly nats: number;
  readonly words: RegExp;
}

const sign = (kind: ChapterKind, nats: number, words: string): KindSign => ({
  kind,
  nats,
  // Spaces belong to the wording, so that a word is never found inside another. What is found begins with one.
  words: new RegExp(` (?:${words})(?= )`, 'g'),
});

const NUMBER =
  '(?:\\d+|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|fifteen|twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety|a hundred|one hundred|two hundred|hundred)';
const JOINING = '(?:clasp|toggle|hook|lobster|ear ?wires?|split ring|swivel|magnet|fastener|snap)';

export const KIND_SIGNS: readonly KindSign[] = [
  sign('opening', 3, 'hello|hi|hey|welcome(?: back)?|good (?:morning|evening|afternoon|day)'),
  sign('opening', 2, 'my name is|i am called|speaking'),
  sign('opening', 2, 'today (?:we|i|you)?|tonight|in this (?:lesson|video|recording|tutorial|session|class)'),
  sign(
    'opening',
    1.5,
    "(?:we|we are|we're|i|you will|you'll|i will|i'll)(?: are| am)?(?: going to| will| would| learn to)? (?:make|making|weave|show you|share)|would make",
  ),
  sign(
    'opening',
    1.5,
    '(?:beginners?|level|difficulty|first time|good (?:first|second) piece|quick|forgiving|easy)',
  ),
  sign(
    'opening',
    1.5,
    `(?:an|${NUMBER}|half an|few) (?:hours?|minutes)|an evening|how long|takes? (?:us|you|me|about)|allow (?:an|one|two)`,
  ),
  sign(
    'opening',
    1,
    '(?:bracelets?|earrings?|necklaces?|chain|cuff|pendant|brooch|key ?ring|finished piece) (?:is|are|that|which|here|today)|my favou?rites?|resembles|looks like',
  ),

  sign(
    'materials',
    2.5,
    "you (?:will |'ll )?(?:also )?(?:need|want|require)|you'll (?:need|want)|do you need|what you need|stuff you need|parts list|shopping(?: list)?|materials?|ingredients",
  ),
  sign(
    'materials',
    2,
    'tools?|pliers|plyers|cutters?|callipers|calipers|ruler|tray|mat|magnifying glass|safety glasses|lamp',
  ),
  sign(
    'materials',
    2,
    'millimet(?:re|er)s?|mm|gauge|gaze|swg|awg|inner diameter|inside diameter|aspect ratio|wire diameter|i d|eye dee|sixty fourths|thirty seconds|mandrel|measured inside|inside',
  ),
  sign(
    'materials',
    1.5,
    'copper|bronze|brass|silver|sterling|stainless|steel|alumini?um|titanium|niobium|rubber|enamell?ed|anodised|anodized|gold filled',
  ),
  sign(
    'materials',
    1.5,
    'spares?|extra|percent|in case|kit|pack|bags?|order|buy|shop|supplier|cost|costs|pounds|euros|dollars|weigh',
  ),
  sign('materials', 1.5, `${NUMBER} (?:\\S+ )?(?:rings|pieces)|how many rings|one size|two sizes|sizes`),
  sign('materials', 1, 'on the table|in front of you|beside you|twist tie|paper clip|what to have'),

  sign(
    'terms',
    3,
    'when i say|what i mean|i mean (?:the|by)|do(?:es)? (?:the|that|these|this)? ?(?:words?)? ?mean|what .{1,30} means?|by .{1,20} i (?:understand|mean)',
  ),
  sign(
    'terms',
    2.5,
    '(?:two|three|four|some|few|the|these) (?:words|terms)|words? (?:i use|before|that|stand)|define|definition|stands? for|vocabulary|the word',
  ),
  sign(
    'terms',
    2,
    'is called|are called|we call|i call|you call|call it|known as|describes|means|is the (?:opening|gap|channel|direction|side)|in other words',
  ),
  sign('terms', 1, 'the eye|an eye|leans?|leaning|the lay|ridges?|trough|row|edge|pair'),

  sign(
    'setup',
    2.5,
    'prepare|prepar(?:ing|ation)|prep|ready|make ready|beforehand|start (?:by|with)|begin (?:by|with)|starting|to start|the start|first thing|let us begin|we start',
  ),
  sign(
    'setup',
    2.5,
    '(?:open|close|opening|closing|opened|closed|shut) (?:up )?(?:half|all|every|the rings|your rings|rings|the other|a third|one third|two thirds|the others|them)|half of them|all the rings|them (?:we|you) (?:close|open)|(?:we|you) (?:close|open) every(?: one)?|stay closed',
  ),
  sign(
    'setup',
    2,
    'pull (?:them|it)? ?apart|never pull|sideways|like a (?:little )?door|towards you|away from you|seams?|past (?:each other|one another)|the gap|gap',
  ),
  sign(
    'setup',
    2,
    '(?:scrap wire|paper clip|twist tie|tag|toothpick|card|handle|lay (?:it|them) out|heaps?|piles?|sort)',
  ),
  sign(
    'setup',
    1.5,
    'the first (?:two|three|pair|row|line|ring|rings|one|unit)|first (?:two|three) pairs?|to hold(?: on)?',
  ),

  sign(
    'repeat unit',
    3,
    'repeats?|over and over|again and again|the same (?:thing|way|route|path|movement)|always the same|every time|each (?:further |new |next )?(?:ring|one|time)|same path',
  ),
  sign(
    'repeat unit',
    2,
    'again|once more|another(?: one)?|and so on|next (?:ring|pair|one|link|row)|one more time',
  ),
  sign(
    'repeat unit',
    2.5,
    "keep (?:on|going|doing)|carry on|continue|until (?:you|it|all|the)|do (?:\\S+ )?more|as many as|(?:every|after) (?:ten|five|third)|that's one unit|one unit|one repeat|the pattern",
  ),
  sign(
    'repeat unit',
    1.5,
    'pick up|go (?:into|through|in|down)|goes (?:in|through|into)|come up|comes? out|through (?:both|the last|the upper|the lower)|fold (?:them )?back|spread|from (?:underneath|below|behind|the front)',
  ),
  sign('repeat unit', 1, 'close|close it|flatten|turn|rotate|wrong (?:side|ones?|way)'),

  sign(
    'finishing',
    3,
    'the (?:last|final) (?:ring|one|row|pair|open ring)|last ring|end (?:row|ring)|far end|at the end|the end|both ends|ending|how do (?:i|you|we) (?:stop|end)|to finish|finishes|finishing|that finishes|trim',
  ),
  sign(
    'finishing',
    2,
    '(?:long enough|as long as|is complete|complete|nearly there|almost done|reached|stop|done|finished|right length)',
  ),
  sign(
    'finishing',
    2.5,
    '(?:take (?:off|out)|remove|cut|untie|takes? the) (?:the )?(?:scrap wire|paper clip|twist tie|tag|wire|holder)|take the (?:paper clip|wire|tag|twist tie) out',
  ),
  sign(
    'finishing',
    2,
    "without (?:carrying|picking)|don't pick|no closed ones|locks? it|lock ring|locks|solid|unwind|fall out|border|corners?|roll it|pull test|gentle pull|twist in it|lies flat",
  ),

  sign('clasp', 3, `(?:the |a |an |your )?${JOINING}|lobster cla(?:sp|ss|sh)|toggle cla(?:sp|sh)`),
  sign(
    'clasp',
    2,
    'clasps?|fasten(?:ed|s|ing)?|unfasten|attach|the loop of|loop of|bar|holders?|tug|opposite end|the other end|other side|both sides|catches|to grab',
  ),
  sign('clasp', 1, 'hang it|wear it|small ring|little rings?|open it close it'),

  sign(
    'variation',
    3,
    'variations?|versions?|options?|another idea|an idea|in two colours|two tone|two colou?rs|three colou?rs',
  ),
  sign(
    'variation',
    2.5,
    "if you (?:want|like|prefer|wanna|'d rather|would rather|use)|if you'd (?:rather|like)|you could|or you (?:can|could)|for this version|some of you",
  ),
  sign(
    'variation',
    2,
    'instead(?: of)?|in place of|rather than|different|colou?rs?|swap|change the|thicker|thinner|wider|longer|shorter|larger|bigger|stripes?|checked|pattern',
  ),
  sign('variation', 1, "for a (?:bag|ring|bracelet|cuff|dude's)|twice as|also nice|looks amazing|gold"),

  sign(
    'closing',
    3,
    'thank you|thanks|goodbye|good night|bye|ciao|farewell|see you|catch you|until (?:the )?next',
  ),
  sign(
    'closing',
    2.5,
    "(?:next|another) (?:time|week|month|lesson|video)|i hope|hope you|well done|there we are|that was|that is it|that's (?:it|us|all)|so yeah",
  ),
  sign(
    'closing',
    2,
    'comments?|questions|pictures of yours|send me|let me know|write (?:to )?(?:me|us|in)|show me|subscribe|liked? it|notes below|below',
  ),
  sign(
    'closing',
    1.5,
    'wash|clean|polish|tumble|keep it|care|dry it|dull|tarnish|warm soapy water|last checks?|look it over',
  ),
];
