/**
 * Words that anyone says about anything: a place made of these alone is more
 * likely to be what was said. From memory, no counted list.
 */
const WORDS = `a about above across act after again against ago all almost alone along already also although always am among an
and another any anyone anything are area around as ask at away back bad be became because become been before began
begin behind being below best better between big bit body book both boy bring brought but buy by call called came can
car case cause certain change child children city clear close come could country course cut day deal did different do does
doing done door down draw drive during each early easy eat either else end enough even ever every everything example eye
eyes face fact fall family far fast father feel feet few field find fine first five follow food for force form found four
free friend from front full game gave get girl give given go god goes going gone good got great group grow had half hand
hands happen happened hard has have having he head hear heard heart help her here high him himself his hold home hot hour
house how however hundred I idea if important in inside instead into is it its itself job just keep kept kind knew know
known land large last late later law lay lead learn least leave led left less let letter level life light like line
list little live long look looked lost lot love low made make making man many matter may maybe me mean means meet men might
mind minute miss moment money month more morning most mother move much must my name near need never new next nice night no
none nor not nothing now number of off often oh okay old on once one only open or order other others our out over own page
part party pass past pay people perhaps person picture piece place plan play point possible power problem put question
quite rather read real really reason red rest right room round run said same sat saw say school second see seem seems seen
sense set several shall she short should show side simple since sit six size sleep small so some someone something
sometimes soon sort sound speak stand start state stay step still stood stop story street strong such sure system table
take taken talk tell ten than thank that the their them then there these they thing things think this those though thought
three through time times to today together told too took top toward town tree true try trying turn two under until
up upon us use used using usually very voice wait walk wall want war was watch water way we week well went were what
whatever when where whether which while white who whole whose why wife will wish with within without woman women word
words work world would write wrong yeah year years yes yet you young your yourself it's that's don't i'm you're we're
they're can't didn't doesn't isn't won't let's there's what's he's she's i've we've you've i'll you'll we'll gonna wanna
eight nine seven fifty twenty thirty`;

const COMMON: ReadonlySet<string> = new Set(WORDS.toLowerCase().split(/\s+/));

export const isCommonWord = (word: string): boolean => COMMON.has(word);
