package ask

import "backleaf/record"

// workTopics: how the work went.
var workTopics = []listed{
	on("trimming", "trim, trimmed, trimming, cut flush, eased", "cloth, linen, edge, blade", events[record.Trimmed]),
	on("cure", "cure, cured, curing, hardened, dry, dried, dry time, drying time, drying", "sealer, ground, varnish, paint, time, fully, long, coat, adhesive, film, touch", (*reader).cured),
	on("sanding", "sand, sanded, sanding, grit, abrasive, sandpaper, abraded, abrade, smoothed, rub down, rubbed, sand down, ground sanded, can sand, can sand ground, sand ground", "ground, cloth, coat, paper, wet, layer, down, paint, surface, safely", (*reader).sanded),
	on("thinning", "thinned, thinner, diluted, dilution, thinning", "water, ground, sealer, coat", (*reader).thinned),
	on("tools", "tool, brush, roller, application", "ground, sealer, coat, varnish", (*reader).tools),
	on("amounts", "amount, quantity, consumption, how many gram, how much gram, how gram, gram, wet amount, much sealer, much ground, much glue, much adhesive, much varnish, much paint, much size, much coat, how much used, many gram, millilitre, many gram ground, many gram sealer, many gram varnish, many gram glue",
		"sealer, ground, coat, varnish, glue, adhesive, paint, per, back, front, edge, cloth, size, gram, total, spread, used, front, layer, primer", (*reader).amounts),
	on("warm-air", "warm air, hair dryer, hairdryer, heat, heated, fan", "dry, dried", events[record.WarmAir]),
	on("air-at-work", "climate, temperature, humidity, relative humidity, rh, air, room climate, warm, how warm, how cold, cold, humid, damp room, degree, hot, celsius, room temperature, air sealer, climate sealer", "workroom, workshop, studio, room, coat, sealer, ground, varnish, cloth, paint, damp, sealed, sealing, during, while", (*reader).air),
	on("lots", "lot, lot number, tin, bottle, bolt, batch number, tin number, number tin, lot sealer, lot ground, lot varnish, lot paint, lot adhesive, lot glue, lot cloth, number sealer, number ground, batch number sealer, batch number ground, batch sealer, batch ground, batch varnish, charge",
		"sealer, ground, varnish, paint, glue, adhesive, cloth, linen, board, material, number, size, coat, batch, producer, maker, tin, primer", (*reader).lots),
	on("products", "product, material, brand, ingredient, supplier, manufacturer, material used", "list, layer, used", (*reader).products),
	on("data-of-the-products", "data, data sheet, stated, specification, technical data, solids, product data", "product, material", (*reader).data),
	on("cutting", "cut, cutting, sawn, settled, degreased, keyed, bought ready, rough side, screen side, saw", "board, surface", events[record.Cut]),
	on("faces-left-bare", "left bare, face left bare, bare face left, why bare, why edge bare", "face, why, edge, back", events[record.LeftBare]),
	on("intention", "intended, intention, cloth intended", "", events[record.Intended]),
	on("laying-of-the-cloth", "cloth laying, weighted, oversize, edge pressed", "cloth, linen", events[record.ClothLaid]),
	on("binders", "binder, sensitive, sensitivity, water sensitive, solubility, soluble, sensitive water, sensitive alcohol", "water, alcohol, solvent, heat, alkali, paint, ground, sealer, varnish", (*reader).binders),
	on("steps-and-dates", "step, timeline, time line, sequence, order work, history, chronology, work order, diary, started, begin, began, how long take, start", "cut, sealed, work, full, short, when", (*reader).steps),
}

// lifeTopics: what the work is, and what became of it.
var lifeTopics = []listed{
	on("finished", "finished, finish, completed, complete, done, ready, unfinished, incomplete painting, when finished, finish date, finished when, completion", "artist, date, exact, painting", (*reader).finished),
	on("date-of-the-work", "date, when made, year, dated, when, old, how old, age, period, year made, when painted, painted year, when created, created, date work, which year, when painting, exact date, decade, antique", "made, work, painted, exact, artist, year, painting, creation", (*reader).when),
	on("maker", "who, who made, maker, artist, author, studio, painter, who painted, whose, who make, creator, attribution, who created, who built, made by whom, name artist, name painter, whose work, original", "contact, paint, painted, made, make, board, itself, creator, support, built", (*reader).maker),
	on("place", "place, where made, place origin, origin, country, place made, where painted, town, city", "", (*reader).place),
	on("owner-and-price", "owner, who own, own, owned, buyer, who bought, bought, price, cost, who paid, paid, pay, sold for, who sold, collector, collection, much sold, much sell, much cost, much paid, client, customer, purchaser, purchased, purchase, expensive, who buy, whom sold, belong, who belong, owned by, possession, name buyer, name owner, address",
		"who, whose, sell, sold, paid, euro, money, private, name, whom, original, dollar, new", (*reader).private),
	on("whereabouts", "stock, became, counted, where, whereabout, where, location, sold, unsold, sale, when sold, loan, lent, borrowed, borrower, stolen, lost, theft, police, police reference, police report, reported, who has, where kept, happened, status, in studio, with artist, still artist, discarded, thrown away, thrown, scrapped, still use, still ok, use, available, gone, exist, museum, buy, returned, return, returned loan, back from loan, on loan, given away, away, recovered, missing painting, kept, where hang, where hung, survive, usable, reuse, destroyed, fate, provenance, locate, ok use, when stolen, who has",
		"number, reference, report, sold, artist, studio, stolen, discarded, when, why, away, has, museum, loan, town, still, kept, sale, owner", (*reader).where),
	on("title", "title, name, called, titled, entitled, untitled, name painting", "", (*reader).title),
	on("subject", "picture, which picture, subject, depict, depicted, motif, represent, scene", "", (*reader).subject),
	on("signature-and-inscriptions", "signature, signed, unsigned, sign, inscription, inscribed, monogram, mark, stamp, where signed, written back, initial, inscription back, write back, autograph, writing, writing back, written on back", "where, back, artist, front, corner, how, maker, painter", (*reader).signed),
	on("edition", "edition, unique", "", (*reader).edition),
	on("short-description", "short description, summary, description, describe", "", (*reader).summary),
	on("what-the-maker-wrote", "maker wrote, wrote, described, words, humidity meant", "maker", events[record.Described]),
	on("earlier-work", "earlier work, reused, painted over, overpainted, earlier painting, pentimento", "", events[record.UsedAgain]),
	on("page-of-the-panel", "page, web page, published, online", "", events[record.Published]),
	on("distinguishing-features", "distinguishing feature, feature, distinguish, knot, tell apart, recognise, recognize", "", (*reader).features),
	on("framed", "framer, frame, framed, frame wood, framing, unframed, frame included, moulding, frame sold, frame colour, frame color, glazed", "wood, sold, with, colour, color, sale, included, float, oak, ash, black", (*reader).framed),
	on("number", "number, inventory number, accession number, reference, inventory, panel number, own number, catalogue number, identifier, id, reference number, registration number", "own, studio", (*reader).number),
	on("sisters", "sister panel, sister, sibling, same batch, batch wrong, batch trouble, batch problem, other batch, panel batch, made together, batch, batch failed, other trouble, batch many, companion, other, other wrong, other problem, rest batch, series, others fail, other discarded, made same time, same series",
		"trouble, wrong, problem, amiss, fail, failed, same, discarded, damaged, many, damage, lifted, together, rest, sound, ok", (*reader).sisters),
	on("care", "care, display, store, storage, light, lux, recommended climate, recommended humidity, humidity display, handling, keep, sun, sunlight, handle, should humidity, should temperature, glass, should keep, should store, should care, environment", "clean, where, home, humidity, temperature, window, direct", (*reader).care),
	on("cleaning", "clean, cleaning, dust, dusting, wipe, wash, dusty, dirt, dirty, soap, sponge, cleaned, can clean, should clean, polish", "safely, cloth, water, surface, wet, damp, dry, brush, paint, with", (*reader).cleaning),
	on("hanging", "hang, hanging, hung, wall hang, fireplace, radiator, bathroom, kitchen, hang wall, hang sun, hook, nail", "wall, where, over, above, sun, sunlight, room, light", (*reader).hanging),
	on("shipping", "transit, protect, ship, shipping, pack, packing, transport, post, send, courier, travel, move, wrap, shipped, packed, packaging, mail, parcel, transporting, lorry, airplane, aeroplane, plane, car, moving, sending, bubble wrap", "crate, pack, transport, safely, travel, bubble, wrap, by", (*reader).shipping),
	on("edges-and-adhesion", "adhesion, delamination, sound, inspected, inspection, bubble, blister, last inspection", "edge, cloth, last, paint", (*reader).sound),
	on("condition", "examination, survey, weak, condition, condition report, damage, damaged, undamaged, scratch, state, crack, cracked, cracking, craquelure, lift, lifted, lifting, loose, flaking, flake, peel, peeling, loss, paint loss, losses, wrong, defect, flaw, problem, trouble, good condition, good shape, good state, condition paint, failed, fail, broken, tear, torn, dent, hole, mould, mold, cloth lifted, cloth loose, chip, chipped, stain, intact, worn, wear, fault, examined, checked, last examined, cloth up, where cloth up, loose, detached, blistered, paint sound, healthy, yellowed, faded",
		"report, last, paint, cloth, corner, noted, edge, crack, lift, lifted, inspection, where, sound, glue, surface, upper, lower, when, damage, who", (*reader).condition),
	on("treatment", "treatment, treated, restored, restoration, conserved, conservation, repair, repaired, retouched, relined, restorer, conservator, retouching, worked on, conservator done", "who, before, last", (*reader).treatment),
}

// recordTopics: papers, and the record itself.
var recordTopics = []listed{
	on("certificate", "certificate, certified, authentic, authenticity, latest certificate, newest certificate, certificate valid, certificate still, genuine, valid certificate, papers, paperwork, document, documentation, proof, certificate last, certificate new", "issued, latest, newest, last, valid, still, replaced, force, offered, revoked, withdrawn, date, out, date, superseded, up, when, new, newer, version, right, original, paper, old", (*reader).certificate),
	on("earlier-certificates", "earlier certificate, certificate history, issued before, certificate before", "certificate", (*reader).certificates),
	on("label", "label, labelled, label printed", "back, printed", events[record.LabelPrinted]),
	on("photographs", "raking light, raking, photograph, photo, image", "", events[record.Photograph]),
	on("changes", "corrected, correction, changed, change, amended, altered, withdrawn, error, mistake, changed later, changed since, wrong record, revised, edited, updated, update, rewritten, record wrong, entry wrong, entry changed, later, since made, alteration, modified, modification, record changed, original entry, first recorded", "record, later, since, entry, sealer, made, why, wrong, recorded, first, when, original, before, reason", (*reader).changes),
	on("written-down", "record written, written down, entry written, recorded when, when recorded, written record, who recorded, record made, record afterwards, record when, when written, when entered, entered, record old, afterwards", "record, when, first, down", (*reader).written),
	on("rules", "archival, rule, permanence, permanent, durable, durability, quality, standard, last long, how long last, good practice, museum quality, stable, stability, sound practice, acid free, craftsmanship, age, conservation grade, properly made, good quality", "quality, made, check, practice, good, long, material, years, hundred", (*reader).rules),
	on("what-is-not-recorded", "leave, omit, omitted, missing, gap, unknown, recorded, unrecorded, incomplete, not know, not recorded, not known, left out, undocumented, lack, lacking, not written, unclear, uncertain, open, blank, record incomplete, missing record, record missing, doesnt know, not sure", "record, not, written, facts, recorded, know", (*reader).gaps),
	on("notes", "note, remark, comment", "", events[record.Note]),
}
