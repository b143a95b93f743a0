package ask

import "backleaf/record"

// workTopics: how the work went.
var workTopics = []listed{
	{"trimming", "trim, trim edge/cloth, cut flush, cut cloth, eased", "cloth, edge, blade", events[record.Trimmed]},
	{"cure", "cure, dry, dry time, dry/cure long, dry/cure ground/sealer/paint/varnish, tacky", "sealer, ground, varnish, paint, time, fully, long, coat, glue, film, touch", (*reader).cured},
	{"sanding", "sand, grit, abrasive, sandpaper, abraded, abrade, smoothed, rub down, rubbed, sand down, sand ground/coat/paint, should sand, should sand ground, grit number", "ground, cloth, coat, paper, wet, layer, down, paint, surface, safely", (*reader).sanded},
	{"thinning", "thinned, water add/added/mixed, water add/added/mixed sealer/ground", "water, ground, sealer, coat", (*reader).thinned},
	{"tools", "tool, brush, roller, spatula, sprayed, how apply, how apply sealer/ground/varnish/paint/coat/size/glue, by hand", "ground, sealer, coat, varnish, apply", (*reader).tools},
	{"amounts", "amount, quantity, consumption, gram, wet amount, how gram, how much gram/used, much sealer/ground/glue/varnish/paint/size/coat, gram sealer/ground/varnish/glue, much sealer/ground/glue/varnish/coat back/front/edge, total gram, coat weight, weight sealer/ground/varnish/glue, millilitre, amount sealer/ground/varnish/glue/paint",
		"sealer, ground, coat, varnish, glue, paint, per, back, front, edge, cloth, size, gram, total, spread, used, layer", (*reader).amounts},
	{"warm-air", "warm air, hair dry, hair dryer, hairdryer, heat, heated, heater, fan, warm dry", "dry, dried", events[record.WarmAir]},
	{"air-at-work", "climate, temperature, humidity, relative humidity, rh, air, room climate/temperature, warm, how warm/cold/hot/humid/damp, cold, humid, damp room, damp was, damp lay cloth, degree, hot, celsius, air sealer, climate sealer",
		"workroom, workshop, studio, room, coat, sealer, ground, varnish, cloth, paint, damp, sealed, seal, during, while", (*reader).air},
	{"lots", "lot, lot/tin/batch/bottle number, tin, bottle, bolt, lot/batch/number/tin sealer/ground/varnish/paint/glue/cloth, charge",
		"sealer, ground, varnish, paint, glue, cloth, board, material, number, size, coat, batch, producer, maker, tin", (*reader).lots},
	{"products", "product, material, brand, ingredient, supplier, manufacturer, product/material list/used, which material, trade name", "list, layer, used", (*reader).lots},
	{"data-of-the-products", "data, data sheet, stated, specification, spec, technical data, solids, density, product data/specification", "product, material, technical, sheet", (*reader).data},
	{"cutting", "cut, cutting, cut board/who/when, sawn, sawed, saw, settled, degreased, keyed, bought ready, rough side, screen side, prepared board, how prepared board", "board, surface, made", events[record.Cut]},
	{"faces-left-bare", "left bare, face left bare, why bare, why edge/back/face bare, left raw", "face, why, edge, back", events[record.LeftBare]},
	{"intention", "intended, intention, cloth intended, meant", "", events[record.Intended]},
	{"laying-of-the-cloth", "cloth laying, cloth lay how, cloth weighted, oversize, edge pressed", "cloth", events[record.ClothLaid]},
	{"binders", "binder, sensitive, sensitivity, solubility, soluble, sensitive water/alcohol/solvent, will dissolve alcohol/water, dissolve alcohol/water, alcohol, ground binder, sealer binder", "water, alcohol, solvent, heat, alkali, paint, ground, sealer, varnish", (*reader).binders},
	{"steps-and-dates", "step, timeline, time line, sequence, work order, history, chronology, chronological, diary, started, begin, began, begun, start, how long take/took, when work, order work done, done when, work done", "cut, sealed, work, full, short, when", (*reader).steps},
}

// lifeTopics: what the work is, and what became of it.
var lifeTopics = []listed{
	{"finished", "finish, finish date, finish when, complete, complete when, done, ready, unfinished, incomplete painting", "maker, date, exact, painting", (*reader).finished},
	{"date-of-the-work", "date, when made, year, year made, dated, when, old, how old, age, period, when/year paint, when/year created, created, creation, date work, which year, when painting, exact date, decade, antique, century", "made, work, paint, exact, maker, year, painting, creation", (*reader).when},
	{"maker", "who, whom, by whom, who made/paint/built/created/make, maker, maker name, made by, paint by, studio, made studio, whose, whose work/painting, attribution, original, who prepared, who prepared board, hand", "contact, paint, made, board, itself, support, built", (*reader).maker},
	{"place", "place, where made/paint/created/from, place origin/made, origin, country, town, city", "paint", (*reader).place},
	{"owner-and-price", "own, who own, buyer, bought, who/whom bought, price, cost, paid, pay, who paid, sold for, who/whom sold, collector, collection, much sold/cost/paid, client, customer, purchaser, expensive, belong, who belong, possession, name buyer/own, address, price sold/bought",
		"who, whose, sold, paid, euro, money, private, name, whom, original, dollar, new", (*reader).private},
	{"whereabouts", "where, where now/painting, change hand, stock, became, counted, whereabout, sold, unsold, when sold, should bought, sold still, loan, on loan, lent, borrowed, borrower, stolen, theft, lost, police, police reference/report, reported, who has, where kept, happened, status, in studio, studio still, with maker, still maker, discarded, thrown, away thrown, scrapped, still use/ok/should, use, available, gone, exist, still exist, museum, returned, return, returned loan, back from loan, given/away, away, recovered, missing painting, kept, survive, still alive, usable, reuse, destroyed, fate, provenance, locate, location, used still, where lives",
		"report, sold, maker, studio, stolen, discarded, when, why, away, has, museum, loan, town, still, kept, own", (*reader).where},
	{"title", "title, name, called, call, titled, entitled, untitled, name painting", "", described(func(d record.Described) string { return d.Title })},
	{"subject", "picture, subject, sitter, model, landscape, still life, portrait, depict, depicted, motif, represent, scene, picture show, show, show painting/picture, in picture", "", described(func(d record.Described) string { return d.Subject })},
	{"signature-and-inscriptions", "sign, unsigned, inscription, monogram, mark, stamp, stamped, where sign, write back/on/front, write, initial, initials, inscription back, autograph, date write on, write on back/front, sign/mark maker", "where, back, maker, front, corner, how", (*reader).signed},
	{"edition", "edition, unique, copy", "", (*reader).edition},
	{"short-description", "short description, summary, description, describe, brief, overview", "", described(func(d record.Described) string { return d.Summary })},
	{"what-the-maker-wrote", "maker write, described, word, humidity meant", "maker", events[record.Described]},
	{"earlier-work", "earlier work, reused, reused board, paint over, overpainted, earlier/old painting, pentimento, paint under was, paint over old, used before", "board", events[record.UsedAgain]},
	{"page-of-the-panel", "page, web page, website, published, online, internet", "", events[record.Published]},
	{"distinguishing-features", "distinguishing feature/mark, feature, distinguish, knot, tell apart, recognise, recognize, identify", "", (*reader).features},
	{"framed", "frame, frame wood/included/sold/colour, unframed, moulding, glazed", "wood, sold, with, colour, included, float, oak, ash, black", (*reader).framed},
	{"number", "number, inventory/accession/panel/own/catalogue/reference/registration/serial/identification number, old/earlier reference, identification, reference, inventory, identifier, id", "own, studio", (*reader).number},
	{"sisters", "sister, sister panel, sibling, batch, batch wrong/trouble/problem/failed/many/damage/same/panel/discarded, other batch, made together, other, other panel/trouble/wrong/problem/discarded/fail/failed/damage, companion, rest batch, series, series damage, same series, same made/prepared/time, many batch",
		"trouble, wrong, problem, amiss, fail, failed, same, discarded, damage, many, lifted, lift, together, rest, sound, ok, other", (*reader).sisters},
	{"care", "care, should care, display, store, light, lux, should humidity/temperature/climate/light/keep/store, recommended climate/humidity, humidity display, handling, keep, sun, sunlight, handle, glass, environment, look after, need climate, should sun, should sun hang",
		"clean, where, home, humidity, temperature, window, direct, should", (*reader).care},
	{"cleaning", "clean, should clean, dust, dusty, dirt, dirty, soap, sponge, polish, grime, duster, dirt off/remove, remove clean, should remove dirt/dust/clean", "safely, cloth, water, surface, wet, damp, dry, brush, paint, with, should", (*reader).cleaning},
	{"hanging", "hang, hang wall/sun/should/where, should hang/where, fireplace, radiator, bathroom, kitchen, hook, nail, should hang sun/radiator", "wall, where, over, above, sun, sunlight, room, light, should", (*reader).hanging},
	{"shipping", "ship, travel, should protect, wrap, wrapped, crate, lorry, airplane, aeroplane, plane, car, truck, bubble wrap", "crate, safely, travel, bubble, wrap, by, should", (*reader).shipping},
	{"edges-and-adhesion", "adhesion, delamination, sound, inspect, bubble, blister, attach still, attach still edge, attach firmly, hold still, glue still", "edge, cloth, last, paint", (*reader).sound},
	{"condition", "condition, condition report/paint, survey, weak, damage, undamaged, scratch, scratched, state, crack, lift, lift cloth, loose, loose cloth, flake, peel, peeling, peeled, loss, losses, loss paint, wrong, defect, flaw, problem, trouble, good condition/shape/state, failed, fail, broken, tear, torn, dent, dented, hole, mould, mold, chip, chipped, stain, stained, intact, worn, wear, fault, checked, last inspect, cloth up, detached, blistered, sound paint, healthy, yellowed, faded, has fade, was damage, woodworm, shape, fragile",
		"report, last, paint, cloth, corner, noted, recorded, edge, crack, lift, inspect, where, sound, glue, surface, upper, lower, when, damage, who", (*reader).condition},
	{"treatment", "treatment, treated, restore, repair, conserved, conservation, retouched, relined, restorer, conservator, retouching, worked on, conservator done, was clean, was fix, has clean", "who, before, last", (*reader).treatment},
}

// recordTopics: papers, and the record itself.
var recordTopics = []listed{
	{"certificate", "certificate, authentic, authenticity, certificate latest/new/newest/valid/still/last, genuine, valid, papers, paperwork, document, documentation, proof, fake, forgery, coa",
		"issued, latest, newest, last, valid, still, replaced, force, offered, revoked, withdrawn, date, out, superseded, up, when, new, newer, version, right, original, paper, old", (*reader).certificate},
	{"earlier-certificates", "earlier/previous certificate, certificate history, issued before, certificate before", "certificate", (*reader).certificates},
	{"label", "label, labelled, label printed", "back, printed, when", events[record.LabelPrinted]},
	{"photographs", "photo, raking, raking light, photo back/front, picture back/front", "back, front", events[record.Photograph]},
	{"changes", "change, change later/since/entry/record, withdrawn, error, mistake, mistake record, put right, put right mistake, entry, entry before, put right entry, wrong record, updated, update, rewritten, entry wrong, later, since made, original entry, first recorded, was change", "record, later, since, entry, sealer, made, why, wrong, recorded, first, when, original, before, reason", (*reader).changes},
	{"written-down", "record/entry write, write down, when recorded/write/entered, recorded later/time/afterwards/then, who recorded, who write record, record made/when/old/afterwards, entered, afterwards, memory, from memory, write down time/later/when", "record, when, first, down", (*reader).written},
	{"rules", "archival, rule, permanence, permanent, durable, durability, quality, standard, last long, will last, will survive, will last/survive year, good practice, museum quality, stable, stability, sound practice, acid free, craftsmanship, conservation grade, properly made, made, good quality",
		"quality, made, check, practice, good, long, material, year, hundred", (*reader).rules},
	{"what-is-not-recorded", "leave, omit, omitted, missing, gap, unknown, recorded, unrecorded, incomplete, not know/recorded/write/say/tell/sure, left out, undocumented, lack, lacking, unclear, uncertain, open, blank, record incomplete/missing/complete, not write down, should not say",
		"record, not, write, facts, recorded, know, down", (*reader).gaps},
	{"notes", "note, remark, comment", "", events[record.Note]},
}
