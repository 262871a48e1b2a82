<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="de_DE" sourcelanguage="en">
<context>
    <name>AgreeShelf</name>
    <message>
        <source>Agree</source>
        <translation>Einigung</translation>
    </message>
    <message>
        <source>By the price book of this shop.</source>
        <translation>Nach der Preisliste dieser Werkstatt.</translation>
    </message>
    <message>
        <source>By the example price book; its figures are invented.</source>
        <translation>Nach der Beispiel-Preisliste; ihre Zahlen sind erfunden.</translation>
    </message>
    <message>
        <source>! The shop&apos;s price book cannot be read; the example stands in.</source>
        <translation>! Die Preisliste der Werkstatt ist nicht lesbar; das Beispiel springt ein.</translation>
    </message>
    <message>
        <source>Client</source>
        <translation>Kunde</translation>
    </message>
    <message>
        <source>Contact</source>
        <translation>Kontakt</translation>
    </message>
    <message>
        <source>Title of the art</source>
        <translation>Titel des Werks</translation>
    </message>
    <message>
        <source>Note for the workshop</source>
        <translation>Hinweis für die Werkstatt</translation>
    </message>
    <message>
        <source>Papers</source>
        <translation>Papiere</translation>
    </message>
    <message>
        <source>Price</source>
        <translation>Preis</translation>
    </message>
    <message>
        <source>Hidden</source>
        <translation>Verborgen</translation>
    </message>
    <message>
        <source>Shown</source>
        <translation>Sichtbar</translation>
    </message>
    <message>
        <source>Price book</source>
        <translation>Preisliste</translation>
    </message>
    <message>
        <source>Look into the price book</source>
        <translation>Preisliste ansehen</translation>
    </message>
    <message>
        <source>Paper</source>
        <translation>Papierformat</translation>
    </message>
    <message>
        <source>Save as PDF</source>
        <translation>Als PDF sichern</translation>
    </message>
    <message>
        <source>Print</source>
        <translation>Drucken</translation>
    </message>
    <message>
        <source>Where the job stands</source>
        <translation>Stand des Auftrags</translation>
    </message>
    <message>
        <source>Status</source>
        <translation>Status</translation>
    </message>
    <message>
        <source>{day} {month}, {time}</source>
        <translation>{day}. {month}, {time}</translation>
    </message>
</context>
<context>
    <name>AgreeStage</name>
    <message>
        <source>Look at</source>
        <translation>Ansicht</translation>
    </message>
    <message>
        <source>Designs</source>
        <translation>Entwürfe</translation>
    </message>
    <message>
        <source>Proposal</source>
        <translation>Angebot</translation>
    </message>
    <message>
        <source>Ticket</source>
        <translation>Werkstattzettel</translation>
    </message>
</context>
<context>
    <name>AgreeStep</name>
    <message>
        <source>no design agreed on yet</source>
        <translation>noch kein Entwurf vereinbart</translation>
    </message>
    <message>
        <source>agreed on, but not measured twice</source>
        <translation>vereinbart, aber nicht zweimal gemessen</translation>
    </message>
    <message>
        <source>agreed on: {design}</source>
        <translation>vereinbart: {design}</translation>
    </message>
    <message>
        <source>Agree on {design}</source>
        <translation>{design} vereinbaren</translation>
    </message>
    <message>
        <source>Client</source>
        <translation>Kunde</translation>
    </message>
    <message>
        <source>Contact</source>
        <translation>Kontakt</translation>
    </message>
    <message>
        <source>Title</source>
        <translation>Titel</translation>
    </message>
    <message>
        <source>Note for the workshop</source>
        <translation>Hinweis für die Werkstatt</translation>
    </message>
    <message>
        <source>Status of the job</source>
        <translation>Status des Auftrags</translation>
    </message>
    <message>
        <source>Where to save the drawings</source>
        <translation>Wohin mit den Zeichnungen?</translation>
    </message>
    <message>
        <source>Save the page</source>
        <translation>Seite sichern</translation>
    </message>
    <message>
        <source>Saved as {name}.</source>
        <translation>Gesichert als {name}.</translation>
    </message>
    <message>
        <source>The drawings are in {folder}.</source>
        <translation>Die Zeichnungen liegen in {folder}.</translation>
    </message>
    <message>
        <source>Handed to the printer.</source>
        <translation>An den Drucker übergeben.</translation>
    </message>
</context>
<context>
    <name>Asking</name>
    <message>
        <source>Bring a picture first, to be asked about it.</source>
        <translation>Bringen Sie erst ein Bild, dann kann dazu gefragt werden.</translation>
    </message>
    <message>
        <source>Every pair that could tell something was asked about on this picture.</source>
        <translation>Zu diesem Bild wurde nach jedem Paar gefragt, das etwas sagen könnte.</translation>
    </message>
</context>
<context>
    <name>AwayLine</name>
    <message>
        <source>Say nothing of why</source>
        <translation>Keinen Grund nennen</translation>
    </message>
    <message>
        <source>Its look</source>
        <translation>Sein Aussehen</translation>
    </message>
    <message>
        <source>Too dear</source>
        <translation>Zu teuer</translation>
    </message>
    <message>
        <source>Not at hand</source>
        <translation>Nicht zur Hand</translation>
    </message>
    <message>
        <source>Sent away because: {reason}</source>
        <translation>Weggelegt, weil: {reason}</translation>
    </message>
    <message>
        <source>{name} is sent away. Why?</source>
        <translation>{name} ist weggelegt. Warum?</translation>
    </message>
</context>
<context>
    <name>BackupsPage</name>
    <message>
        <source>Take a backup now</source>
        <translation>Jetzt sichern</translation>
    </message>
    <message>
        <source>Newer jobs</source>
        <translation>Neuere Aufträge</translation>
    </message>
    <message>
        <source>Come along</source>
        <translation>Kommen mit</translation>
    </message>
    <message>
        <source>Stay behind</source>
        <translation>Bleiben zurück</translation>
    </message>
    <message>
        <source>Put it back</source>
        <translation>Zurückholen</translation>
    </message>
    <message>
        <source>Jobs that are newer than the backup</source>
        <translation>Aufträge, die neuer sind als die Sicherung</translation>
    </message>
    <message>
        <source>The jobs are on a server: its keeper looks after backups there.</source>
        <translation>Die Aufträge liegen auf einem Server; wer ihn betreut, sorgt dort für Sicherungen.</translation>
    </message>
    <message>
        <source>No backup yet. One is taken every few hours while the window is open.</source>
        <translation>Noch keine Sicherung. Alle paar Stunden wird eine angelegt, solange das Fenster offen ist.</translation>
    </message>
    <message>
        <source>One is taken every few hours; older ones are let go, the newest of each day, week and month stay. Choose one to put it back.</source>
        <translation>Alle paar Stunden wird eine angelegt; ältere fallen weg, die neueste jedes Tages, jeder Woche und jedes Monats bleibt. Wählen Sie eine, um sie zurückzuholen.</translation>
    </message>
    <message>
        <source>What is newer stays in the book. The present file is kept beside it. Close the program at other places that use this file first.</source>
        <translation>Was neuer ist, bleibt im Buch. Die jetzige Datei wird daneben aufgehoben. Schließen Sie das Programm vorher an anderen Plätzen, die diese Datei benutzen.</translation>
    </message>
    <message>
        <source>The book is as it was then; jobs begun since are missing from it. The present file is kept beside it. Close the program at other places that use it first.</source>
        <translation>Das Buch ist dann wie damals; seither begonnene Aufträge fehlen darin. Die jetzige Datei wird daneben aufgehoben. Schließen Sie das Programm vorher an anderen Plätzen, die sie benutzen.</translation>
    </message>
</context>
<context>
    <name>Begin</name>
    <message>
        <source>Build what lies round the picture</source>
        <translation>Aufbauen, was um das Bild liegt</translation>
    </message>
    <message>
        <source>Find three designs for this picture</source>
        <translation>Drei Entwürfe für dieses Bild suchen</translation>
    </message>
    <message>
        <source>Begin a design</source>
        <translation>Entwurf beginnen</translation>
    </message>
    <message>
        <source>Bring the picture first; it is what the frame is for.</source>
        <translation>Bringen Sie erst das Bild; dafür ist der Rahmen da.</translation>
    </message>
    <message>
        <source>Type how large the art is. It can be measured exactly later.</source>
        <translation>Geben Sie an, wie groß das Werk ist. Genau gemessen wird später.</translation>
    </message>
    <message>
        <source>Round the picture lies {names}.</source>
        <translation>Um das Bild liegt: {names}.</translation>
    </message>
    <message>
        <source>Lay samples round the picture in Choose, or let designs be found.</source>
        <translation>Legen Sie in der Auswahl Muster um das Bild, oder lassen Sie Entwürfe suchen.</translation>
    </message>
</context>
<context>
    <name>BookShelf</name>
    <message>
        <source>Shelf</source>
        <translation>Regal</translation>
    </message>
    <message>
        <source>Job</source>
        <translation>Auftrag</translation>
    </message>
    <message>
        <source>Client</source>
        <translation>Kunde</translation>
    </message>
    <message>
        <source>Backups</source>
        <translation>Sicherungen</translation>
    </message>
    <message>
        <source>In the book</source>
        <translation>Im Buch</translation>
    </message>
</context>
<context>
    <name>BookStage</name>
    <message>
        <source>Client, title or number</source>
        <translation>Kunde, Titel oder Nummer</translation>
    </message>
    <message>
        <source>Code of a sample</source>
        <translation>Code eines Musters</translation>
    </message>
    <message>
        <source>Begun: 2026, 2026-03 …</source>
        <translation>Begonnen: 2026, 2026-03 …</translation>
    </message>
    <message>
        <source>Status</source>
        <translation>Status</translation>
    </message>
    <message>
        <source>Any</source>
        <translation>Alle</translation>
    </message>
    <message>
        <source>Jobs, those changed last first</source>
        <translation>Aufträge, zuletzt geänderte zuerst</translation>
    </message>
    <message>
        <source>The job book</source>
        <translation>Das Auftragsbuch</translation>
    </message>
    <message>
        <source>1 job</source>
        <translation>1 Auftrag</translation>
    </message>
    <message>
        <source>{count} jobs</source>
        <translation>{count} Aufträge</translation>
    </message>
    <message>
        <source>The shop&apos;s jobs cannot be reached for now: {fault}</source>
        <translation>Die Aufträge sind im Moment nicht erreichbar: {fault}</translation>
    </message>
    <message>
        <source>No job is like that. Ask for less: fewer words, any status.</source>
        <translation>So ist kein Auftrag. Fragen Sie nach weniger: weniger Wörter, jeder Status.</translation>
    </message>
    <message>
        <source>No jobs yet. A job is in the book as soon as its picture is brought.</source>
        <translation>Noch keine Aufträge. Ein Auftrag steht im Buch, sobald sein Bild da ist.</translation>
    </message>
</context>
<context>
    <name>Bringing</name>
    <message>
        <source>Open a photograph or a job</source>
        <translation>Foto oder Auftrag öffnen</translation>
    </message>
    <message>
        <source>Jobs (*{ending})</source>
        <translation>Aufträge (*{ending})</translation>
    </message>
    <message>
        <source>Put the job into a file</source>
        <translation>Auftrag in eine Datei legen</translation>
    </message>
    <message>
        <source>There is no picture to paste: copy one first.</source>
        <translation>Es gibt kein Bild zum Einfügen: Kopieren Sie zuerst eines.</translation>
    </message>
</context>
<context>
    <name>BuildDesigns</name>
    <message>
        <source>Layers</source>
        <translation>Lagen</translation>
    </message>
    <message>
        <source>Frame alone</source>
        <translation>Nur Rahmen</translation>
    </message>
    <message>
        <source>Mat, frame</source>
        <translation>Passepartout, Rahmen</translation>
    </message>
    <message>
        <source>Two mats, frame</source>
        <translation>Zwei Passepartouts, Rahmen</translation>
    </message>
    <message>
        <source>Fillet, mat, frame</source>
        <translation>Filet, Passepartout, Rahmen</translation>
    </message>
    <message>
        <source>no limit</source>
        <translation>keine Grenze</translation>
    </message>
    <message>
        <source>Most that the samples may cost</source>
        <translation>Was die Muster höchstens kosten dürfen</translation>
    </message>
    <message>
        <source>Find three designs</source>
        <translation>Drei Entwürfe suchen</translation>
    </message>
    <message>
        <source>Lay all beside each other</source>
        <translation>Alle nebeneinanderlegen</translation>
    </message>
    <message>
        <source>Must be in them</source>
        <translation>Muss dabei sein</translation>
    </message>
    <message>
        <source>Bring a picture first; it is what the designs are for.</source>
        <translation>Bringen Sie erst ein Bild; dafür sind die Entwürfe da.</translation>
    </message>
    <message>
        <source>The limit</source>
        <translation>Die Grenze</translation>
    </message>
    <message>
        <source>Layers from the art outward</source>
        <translation>Lagen vom Bild nach außen</translation>
    </message>
    <message>
        <source>The samples&apos; list prices together, at most</source>
        <translation>Listenpreise der Muster zusammen, höchstens</translation>
    </message>
    <message>
        <source>Looking for designs</source>
        <translation>Entwürfe werden gesucht</translation>
    </message>
    <message>
        <source>Must be in them: {name}</source>
        <translation>Muss dabei sein: {name}</translation>
    </message>
    <message>
        <source>The best of %1 combinations.</source>
        <translation>Die besten von %1 Kombinationen.</translation>
    </message>
    <message>
        <source>Stop looking</source>
        <translation>Suche anhalten</translation>
    </message>
    <message>
        <source>Every combination is being looked at.</source>
        <translation>Alle Kombinationen werden durchgesehen.</translation>
    </message>
</context>
<context>
    <name>BuildLiked</name>
    <message>
        <source>Find the nearest that works</source>
        <translation>Das Nächste suchen, das geht</translation>
    </message>
    <message>
        <source>Use it</source>
        <translation>Nehmen</translation>
    </message>
    <message>
        <source>A client may love what does not work. Say what is liked about the chosen part, and the nearest sample that works better keeps it.</source>
        <translation>Manchmal gefällt, was nicht passt. Sagen Sie, was am gewählten Teil gefällt; das nächste Muster, das besser passt, behält es.</translation>
    </message>
    <message>
        <source>Liked about it</source>
        <translation>Was daran gefällt</translation>
    </message>
    <message>
        <source>Hue</source>
        <translation>Farbton</translation>
    </message>
    <message>
        <source>Depth</source>
        <translation>Tiefe</translation>
    </message>
    <message>
        <source>Strength</source>
        <translation>Kräftigkeit</translation>
    </message>
    <message>
        <source>Surface</source>
        <translation>Oberfläche</translation>
    </message>
    <message>
        <source>Sheen</source>
        <translation>Glanz</translation>
    </message>
    <message>
        <source>Pattern</source>
        <translation>Musterung</translation>
    </message>
    <message>
        <source>Liked: {what}</source>
        <translation>Gefällt: {what}</translation>
    </message>
    <message>
        <source>Choose a layer or the frame in the section first.</source>
        <translation>Wählen Sie zuerst im Schnitt eine Lage oder den Rahmen.</translation>
    </message>
    <message>
        <source>Nothing in the rack is better than this one: it works as it is.</source>
        <translation>Im Sortiment ist nichts besser als dieses: Es passt, wie es ist.</translation>
    </message>
</context>
<context>
    <name>BuildSamples</name>
    <message>
        <source>Show</source>
        <translation>Zeigen</translation>
    </message>
    <message>
        <source>Mats</source>
        <translation>Passepartouts</translation>
    </message>
    <message>
        <source>Wrapped fillets</source>
        <translation>Bezogene Filets</translation>
    </message>
    <message>
        <source>Wood fillets</source>
        <translation>Holzfilets</translation>
    </message>
    <message>
        <source>Liners</source>
        <translation>Einlageleisten</translation>
    </message>
    <message>
        <source>Mouldings</source>
        <translation>Leisten</translation>
    </message>
    <message>
        <source>Samples for the chosen part, best first</source>
        <translation>Muster für den gewählten Teil, beste zuerst</translation>
    </message>
    <message>
        <source>Use it</source>
        <translation>Nehmen</translation>
    </message>
    <message>
        <source>Use it for this part</source>
        <translation>Für diesen Teil nehmen</translation>
    </message>
    <message>
        <source>Use the sample for the chosen part  (Enter)</source>
        <translation>Das Muster für den gewählten Teil nehmen  (Enter)</translation>
    </message>
    <message>
        <source>Add</source>
        <translation>Hinzu</translation>
    </message>
    <message>
        <source>Add it as a layer outside the chosen one</source>
        <translation>Als Lage außen an die gewählte legen</translation>
    </message>
    <message>
        <source>Add it as a layer outside the chosen one  (S)</source>
        <translation>Als Lage außen an die gewählte legen  (S)</translation>
    </message>
    <message>
        <source>Keep on the rail</source>
        <translation>Auf das Bord legen</translation>
    </message>
    <message>
        <source>Choose a sample to begin with, best first for this picture.</source>
        <translation>Wählen Sie ein Muster zum Anfangen, beste für dieses Bild zuerst.</translation>
    </message>
    <message>
        <source>For the frame: best first beside what lies in it, and for the picture.</source>
        <translation>Für den Rahmen: beste zuerst neben dem, was darin liegt, und für das Bild.</translation>
    </message>
    <message>
        <source>For layer %1: best first beside its neighbours and for the picture.</source>
        <translation>Für Lage %1: beste zuerst neben ihren Nachbarn und für das Bild.</translation>
    </message>
    <message>
        <source>Choose a part in the section; samples here are for next to the frame.</source>
        <translation>Wählen Sie einen Teil im Schnitt; diese Muster sind für den Platz am Rahmen.</translation>
    </message>
</context>
<context>
    <name>BuildShelf</name>
    <message>
        <source>Shelf</source>
        <translation>Regal</translation>
    </message>
    <message>
        <source>This part</source>
        <translation>Dieser Teil</translation>
    </message>
    <message>
        <source>Three designs</source>
        <translation>Drei Entwürfe</translation>
    </message>
    <message>
        <source>Near liked</source>
        <translation>Ähnliches</translation>
    </message>
</context>
<context>
    <name>BuildStep</name>
    <message>
        <source>no design yet</source>
        <translation>noch kein Entwurf</translation>
    </message>
    <message>
        <source>the stack is too deep for the rabbet</source>
        <translation>der Aufbau ist zu tief für den Falz</translation>
    </message>
    <message>
        <source>1 design</source>
        <translation>1 Entwurf</translation>
    </message>
    <message>
        <source>{count} designs</source>
        <translation>{count} Entwürfe</translation>
    </message>
</context>
<context>
    <name>Canvas</name>
    <message>
        <source>The picture</source>
        <translation>Das Bild</translation>
    </message>
</context>
<context>
    <name>ChargeForm</name>
    <message>
        <source>What the line is called</source>
        <translation>Wie die Zeile heißt</translation>
    </message>
    <message>
        <source>Other rates for small sizes</source>
        <translation>Andere Sätze für kleine Maße</translation>
    </message>
    <message>
        <source>Up to so many united inches, at that rate: 24: 0.70; 40: 0.80</source>
        <translation>Bis zu so vielen Zoll Breite plus Höhe zu diesem Satz: 24: 0.70; 40: 0.80</translation>
    </message>
    <message>
        <source>Minutes of labour</source>
        <translation>Arbeitsminuten</translation>
    </message>
    <message>
        <source>Waste added, %</source>
        <translation>Verschnitt dazu, %</translation>
    </message>
    <message>
        <source>Least amount of the line</source>
        <translation>Mindestbetrag der Zeile</translation>
    </message>
    <message>
        <source>Only when the material contains</source>
        <translation>Nur wenn das Material enthält</translation>
    </message>
    <message>
        <source>Empty for any material.</source>
        <translation>Leer für jedes Material.</translation>
    </message>
    <message>
        <source>Only for these codes</source>
        <translation>Nur für diese Codes</translation>
    </message>
    <message>
        <source>With * standing for anything, like M-*. Empty for all.</source>
        <translation>Ein * steht für alles, wie M-*. Leer für alle.</translation>
    </message>
    <message>
        <source>For</source>
        <translation>Für</translation>
    </message>
    <message>
        <source>Charged by</source>
        <translation>Berechnet nach</translation>
    </message>
    <message>
        <source>Unit</source>
        <translation>Einheit</translation>
    </message>
    <message>
        <source>The client sees it</source>
        <translation>Der Kunde sieht sie</translation>
    </message>
    <message>
        <source>As a line</source>
        <translation>Als Zeile</translation>
    </message>
    <message>
        <source>Only within one sum</source>
        <translation>Nur in einer Summe</translation>
    </message>
    <message>
        <source>Move up</source>
        <translation>Nach oben</translation>
    </message>
    <message>
        <source>Move down</source>
        <translation>Nach unten</translation>
    </message>
    <message>
        <source>Take it out</source>
        <translation>Herausnehmen</translation>
    </message>
</context>
<context>
    <name>ChargeRow</name>
    <message>
        <source>edit</source>
        <translation>ändern</translation>
    </message>
    <message>
        <source>Edit {title}</source>
        <translation>{title} ändern</translation>
    </message>
    <message>
        <source>Not in this design.</source>
        <translation>Nicht in diesem Entwurf.</translation>
    </message>
    <message>
        <source>Private: the client sees it only within one sum.</source>
        <translation>Intern: Der Kunde sieht sie nur in einer Summe.</translation>
    </message>
</context>
<context>
    <name>ChooseShelf</name>
    <message>
        <source>Which for this picture?</source>
        <translation>Welches für dieses Bild?</translation>
    </message>
    <message>
        <source>Taste</source>
        <translation>Geschmack</translation>
    </message>
    <message>
        <source>No sample passes. Switch a kind off, clear the search, or let the colour go.</source>
        <translation>Kein Muster kommt durch. Schalten Sie eine Art ab, leeren Sie die Suche oder lassen Sie die Farbe los.</translation>
    </message>
    <message>
        <source>Samples, best first</source>
        <translation>Muster, beste zuerst</translation>
    </message>
    <message>
        <source>Samples</source>
        <translation>Muster</translation>
    </message>
    <message>
        <source>Mats</source>
        <translation>Passepartouts</translation>
    </message>
    <message>
        <source>Wrapped fillets</source>
        <translation>Bezogene Filets</translation>
    </message>
    <message>
        <source>Wood fillets</source>
        <translation>Holzfilets</translation>
    </message>
    <message>
        <source>Liners</source>
        <translation>Einlageleisten</translation>
    </message>
    <message>
        <source>Mouldings</source>
        <translation>Leisten</translation>
    </message>
    <message>
        <source>Show only: {kind}</source>
        <translation>Nur zeigen: {kind}</translation>
    </message>
    <message>
        <source>Lay round</source>
        <translation>Umlegen</translation>
    </message>
    <message>
        <source>Lay round the picture</source>
        <translation>Um das Bild legen</translation>
    </message>
    <message>
        <source>Lay the sample round the picture  (Enter)</source>
        <translation>Das Muster um das Bild legen  (Enter)</translation>
    </message>
    <message>
        <source>Slide</source>
        <translation>Schieben</translation>
    </message>
    <message>
        <source>Slide over the picture</source>
        <translation>Über das Bild schieben</translation>
    </message>
    <message>
        <source>Lay the sample on the picture as a strip  (S)</source>
        <translation>Das Muster als Streifen auf das Bild legen  (S)</translation>
    </message>
    <message>
        <source>The measures behind the reasons</source>
        <translation>Die Messwerte hinter den Gründen</translation>
    </message>
    <message>
        <source>Keep on the rail</source>
        <translation>Auf das Bord legen</translation>
    </message>
    <message>
        <source>Send away</source>
        <translation>Weglegen</translation>
    </message>
    <message>
        <source>Best first for this picture, with the reason. Click on a colour of the picture to look near it.</source>
        <translation>Beste für dieses Bild zuerst, mit Begründung. Ein Klick auf eine Farbe des Bildes sucht in ihrer Nähe.</translation>
    </message>
    <message>
        <source>Bring a picture, and the rack is judged against it.</source>
        <translation>Bringen Sie ein Bild, dann wird das Sortiment daran gemessen.</translation>
    </message>
    <message>
        <source>The rack is empty.</source>
        <translation>Das Sortiment ist leer.</translation>
    </message>
    <message>
        <source>The rack is being judged.</source>
        <translation>Das Sortiment wird beurteilt.</translation>
    </message>
</context>
<context>
    <name>ChooseStep</name>
    <message>
        <source>{count} kept</source>
        <translation>{count} gemerkt</translation>
    </message>
    <message>
        <source>nothing kept yet</source>
        <translation>noch nichts gemerkt</translation>
    </message>
</context>
<context>
    <name>ClientPage</name>
    <message>
        <source>List their jobs</source>
        <translation>Aufträge dieses Kunden</translation>
    </message>
    <message>
        <source>Take all out as files</source>
        <translation>Alle als Dateien herausgeben</translation>
    </message>
    <message>
        <source>Erase …</source>
        <translation>Löschen …</translation>
    </message>
    <message>
        <source>Erase all of this client</source>
        <translation>Alles von diesem Kunden löschen</translation>
    </message>
    <message>
        <source>The client&apos;s name</source>
        <translation>Name des Kunden</translation>
    </message>
    <message>
        <source>Type the client&apos;s name to erase everything</source>
        <translation>Den Namen des Kunden eingeben, um alles zu löschen</translation>
    </message>
    <message>
        <source>Erase for ever</source>
        <translation>Für immer löschen</translation>
    </message>
    <message>
        <source>Keep everything</source>
        <translation>Alles behalten</translation>
    </message>
    <message>
        <source>No client</source>
        <translation>Kein Kunde</translation>
    </message>
    <message>
        <source>Choose a job that has a client&apos;s name.</source>
        <translation>Wählen Sie einen Auftrag, der den Namen eines Kunden trägt.</translation>
    </message>
    <message>
        <source>1 job in the book.</source>
        <translation>1 Auftrag im Buch.</translation>
    </message>
    <message>
        <source>{count} jobs in the book.</source>
        <translation>{count} Aufträge im Buch.</translation>
    </message>
    <message>
        <source>All {count} jobs of {name}, with their photographs, go for ever: here and in the backups. This cannot be undone. Take them out as files first if they may be needed, and type the name to go on.</source>
        <translation>Alle {count} Aufträge von {name} samt ihren Fotos gehen für immer: hier und in den Sicherungen. Das lässt sich nicht zurücknehmen. Geben Sie sie vorher als Dateien heraus, wenn sie noch gebraucht werden, und tippen Sie den Namen ein.</translation>
    </message>
    <message>
        <source>Into which folder?</source>
        <translation>In welchen Ordner?</translation>
    </message>
    <message>
        <source>Written as files: {count}.</source>
        <translation>Als Dateien geschrieben: {count}.</translation>
    </message>
    <message>
        <source>Without their photograph, which is lost: {numbers}.</source>
        <translation>Ohne ihr Foto, das verloren ist: {numbers}.</translation>
    </message>
    <message>
        <source>Erased: {count} jobs.</source>
        <translation>Gelöscht: {count} Aufträge.</translation>
    </message>
    <message>
        <source>Look at these yourself, they may still hold something: {files}.</source>
        <translation>Sehen Sie diese selbst durch, sie können noch etwas enthalten: {files}.</translation>
    </message>
</context>
<context>
    <name>ClientView</name>
    <message>
        <source>Framing Palette: the picture</source>
        <translation>Framing Palette: das Bild</translation>
    </message>
</context>
<context>
    <name>CompareBoard</name>
    <message>
        <source>Side by side</source>
        <translation>Nebeneinander</translation>
    </message>
    <message>
        <source>Blink between two</source>
        <translation>Zwischen zweien blinken</translation>
    </message>
    <message>
        <source>Space</source>
        <translation>Leertaste</translation>
    </message>
    <message>
        <source>Show the other one</source>
        <translation>Das andere zeigen</translation>
    </message>
    <message>
        <source>Back to one picture</source>
        <translation>Zurück zu einem Bild</translation>
    </message>
    <message>
        <source>Blinking: {first} and {second}</source>
        <translation>Blinkt: {first} und {second}</translation>
    </message>
</context>
<context>
    <name>ComparePanel</name>
    <message>
        <source>Note</source>
        <translation>Notiz</translation>
    </message>
    <message>
        <source>Note on {title}</source>
        <translation>Notiz zu {title}</translation>
    </message>
    <message>
        <source>Prefer it to those beside it: {title}</source>
        <translation>Denen daneben vorziehen: {title}</translation>
    </message>
    <message>
        <source>Lay this one round the picture: {title}</source>
        <translation>Dieses um das Bild legen: {title}</translation>
    </message>
    <message>
        <source>Take it off the rail: {title}</source>
        <translation>Vom Bord nehmen: {title}</translation>
    </message>
    <message>
        <source>Send it away: {title}</source>
        <translation>Weglegen: {title}</translation>
    </message>
    <message>
        <source>Stands apart and belongs.</source>
        <translation>Steht für sich und gehört dazu.</translation>
    </message>
    <message>
        <source>Settles into the picture or keeps back.</source>
        <translation>Fügt sich in das Bild oder hält sich zurück.</translation>
    </message>
    <message>
        <source>Fights the picture.</source>
        <translation>Beißt sich mit dem Bild.</translation>
    </message>
    <message>
        <source>Preferred to {titles}.</source>
        <translation>Vorgezogen: vor {titles}.</translation>
    </message>
</context>
<context>
    <name>ContactSheet</name>
    <message>
        <source>Width of what the photograph shows</source>
        <translation>Breite dessen, was das Foto zeigt</translation>
    </message>
    <message>
        <source>Choose a photograph</source>
        <translation>Foto wählen</translation>
    </message>
    <message>
        <source>Kind</source>
        <translation>Art</translation>
    </message>
    <message>
        <source>Put them on the rack</source>
        <translation>Ins Sortiment nehmen</translation>
    </message>
    <message>
        <source>A photograph of many swatches</source>
        <translation>Ein Foto mit vielen Mustern</translation>
    </message>
    <message>
        <source>Looking for swatches</source>
        <translation>Muster werden gesucht</translation>
    </message>
    <message>
        <source>Measuring</source>
        <translation>Es wird gemessen</translation>
    </message>
    <message>
        <source>Put {count} swatches of {name} on the rack</source>
        <translation>{count} Muster aus {name} ins Sortiment nehmen</translation>
    </message>
    <message>
        <source>{count} swatches are on the rack. Undo takes them all back.</source>
        <translation>{count} Muster sind im Sortiment. Rückgängig nimmt alle wieder heraus.</translation>
    </message>
    <message>
        <source>{swatches} swatches, {codes} codes</source>
        <translation>{swatches} Muster, {codes} Codes</translation>
    </message>
    <message>
        <source>One photograph of many swatches that lie apart on an even ground, best with a colour chart beside them. Each is found, outlined and measured.</source>
        <translation>Ein Foto mit vielen Mustern, die getrennt auf gleichmäßigem Grund liegen, am besten mit einer Farbkarte daneben. Jedes wird gefunden, umrissen und gemessen.</translation>
    </message>
    <message>
        <source>Width of what it shows (may be left out)</source>
        <translation>Breite des Gezeigten (darf fehlen)</translation>
    </message>
    <message>
        <source>Codes, left to right and row by row, one a line</source>
        <translation>Codes, von links nach rechts und Reihe für Reihe, einer je Zeile</translation>
    </message>
</context>
<context>
    <name>DamagePanel</name>
    <message>
        <source>Restore the backup</source>
        <translation>Sicherung zurückholen</translation>
    </message>
    <message>
        <source>Begin with an empty book</source>
        <translation>Mit leerem Buch beginnen</translation>
    </message>
    <message>
        <source>The job book is damaged</source>
        <translation>Das Auftragsbuch ist beschädigt</translation>
    </message>
    <message>
        <source>The damaged file is kept beside the new one, and what is done until then is kept on this computer. Close the program at other places that use the file first.</source>
        <translation>Die beschädigte Datei wird neben der neuen aufgehoben, und was bis dahin geschieht, bleibt auf diesem Rechner. Schließen Sie das Programm vorher an anderen Plätzen, die die Datei benutzen.</translation>
    </message>
    <message>
        <source>The file of the shop&apos;s jobs cannot be read, and there is no whole backup of it. Jobs that can still be read in it come along into an empty book.</source>
        <translation>Die Datei mit den Aufträgen ist nicht lesbar, und es gibt keine heile Sicherung davon. Aufträge, die darin noch lesbar sind, kommen mit in ein leeres Buch.</translation>
    </message>
    <message>
        <source>The file of the shop&apos;s jobs cannot be read. The newest whole backup is of {day}, {time}. Jobs that can still be read in the file and are newer come along.</source>
        <translation>Die Datei mit den Aufträgen ist nicht lesbar. Die neueste heile Sicherung ist vom {day}, {time}. Aufträge, die in der Datei noch lesbar und neuer sind, kommen mit.</translation>
    </message>
</context>
<context>
    <name>Designs</name>
    <message>
        <source>First design</source>
        <translation>Erster Entwurf</translation>
    </message>
    <message>
        <source>Second design</source>
        <translation>Zweiter Entwurf</translation>
    </message>
    <message>
        <source>Third design</source>
        <translation>Dritter Entwurf</translation>
    </message>
</context>
<context>
    <name>DifferingBar</name>
    <message>
        <source>Save it so</source>
        <translation>So sichern</translation>
    </message>
    <message>
        <source>Changed here and at the other counter</source>
        <translation>Hier und am anderen Platz geändert</translation>
    </message>
    <message>
        <source>As here</source>
        <translation>Wie hier</translation>
    </message>
    <message>
        <source>As there</source>
        <translation>Wie dort</translation>
    </message>
    <message>
        <source>Here: {what}</source>
        <translation>Hier: {what}</translation>
    </message>
    <message>
        <source>There: {what}</source>
        <translation>Dort: {what}</translation>
    </message>
</context>
<context>
    <name>DrawingLayer</name>
    <message>
        <source>wheel: %1</source>
        <translation>Rad: %1</translation>
    </message>
</context>
<context>
    <name>DrawingTools</name>
    <message>
        <source>Move picture and regions</source>
        <translation>Bild und Bereiche bewegen</translation>
    </message>
    <message>
        <source>Rectangle</source>
        <translation>Rechteck</translation>
    </message>
    <message>
        <source>Ellipse</source>
        <translation>Ellipse</translation>
    </message>
    <message>
        <source>Lasso</source>
        <translation>Lasso</translation>
    </message>
    <message>
        <source>Polygon: click its corners, Enter closes it</source>
        <translation>Vieleck: Ecken anklicken, Enter schließt es</translation>
    </message>
    <message>
        <source>Grow from a click; the wheel sets how far</source>
        <translation>Von einem Klick aus wachsen; das Rad sagt, wie weit</translation>
    </message>
    <message>
        <source>Show the accents</source>
        <translation>Akzente zeigen</translation>
    </message>
</context>
<context>
    <name>Facts</name>
    <message>
        <source>Sight size {size}</source>
        <translation>Sichtmaß {size}</translation>
    </message>
    <message>
        <source>Outside {size}</source>
        <translation>Außen {size}</translation>
    </message>
    <message>
        <source>Deep enough: {names}.</source>
        <translation>Tief genug: {names}.</translation>
    </message>
    <message>
        <source>No moulding of the rack is deep enough.</source>
        <translation>Keine Leiste des Sortiments ist tief genug.</translation>
    </message>
</context>
<context>
    <name>FoundCard</name>
    <message>
        <source>Take it</source>
        <translation>Nehmen</translation>
    </message>
    <message>
        <source>Take design {number}: {names}</source>
        <translation>Entwurf {number} nehmen: {names}</translation>
    </message>
</context>
<context>
    <name>Frame</name>
    <message>
        <source>Setting out the samples</source>
        <translation>Muster werden ausgelegt</translation>
    </message>
</context>
<context>
    <name>GapList</name>
    <message>
        <source>Open a picture to see which of its colours the rack cannot answer.</source>
        <translation>Öffnen Sie ein Bild, um zu sehen, welche seiner Farben das Sortiment nicht beantwortet.</translation>
    </message>
    <message>
        <source>The rack answers everything: each of {asked} colours that this picture asks for has a sample in stock within ΔE₀₀&#xa0;{near:.0f}.</source>
        <translation>Das Sortiment beantwortet alles: Zu jeder der {asked} Farben, nach denen dieses Bild fragt, ist ein Muster innerhalb von ΔE₀₀ {near:.0f} vorrätig.</translation>
    </message>
    <message>
        <source>{gaps} of {asked} colours that this picture asks for, itself or more quietly, have nothing in stock within ΔE₀₀&#xa0;{near:.0f}.</source>
        <translation>Zu {gaps} von {asked} Farben, nach denen dieses Bild selbst oder leiser fragt, ist nichts innerhalb von ΔE₀₀ {near:.0f} vorrätig.</translation>
    </message>
</context>
<context>
    <name>GapRow</name>
    <message>
        <source>in the picture</source>
        <translation>im Bild</translation>
    </message>
    <message>
        <source>weaker than in the picture</source>
        <translation>schwächer als im Bild</translation>
    </message>
    <message>
        <source>paler than in the picture</source>
        <translation>blasser als im Bild</translation>
    </message>
    <message>
        <source>deeper than in the picture</source>
        <translation>tiefer als im Bild</translation>
    </message>
    <message>
        <source>Nearest: {name}, ΔE₀₀ {delta_e:.1f}</source>
        <translation>Am nächsten: {name}, ΔE₀₀ {delta_e:.1f}</translation>
    </message>
    <message>
        <source>Nothing in stock at all</source>
        <translation>Gar nichts vorrätig</translation>
    </message>
</context>
<context>
    <name>GreySteps</name>
    <message>
        <source>Grey steps from dark to light</source>
        <translation>Graustufen von dunkel nach hell</translation>
    </message>
</context>
<context>
    <name>HiddenList</name>
    <message>
        <source>These samples are in no list. Show one again here.</source>
        <translation>Diese Muster stehen in keiner Liste. Hier können Sie eines wieder zeigen.</translation>
    </message>
    <message>
        <source>Nothing is hidden. Hide a sample that the shop does not offer any more.</source>
        <translation>Nichts ist verborgen. Verbergen Sie ein Muster, das die Werkstatt nicht mehr anbietet.</translation>
    </message>
    <message>
        <source>Show {name} again</source>
        <translation>{name} wieder zeigen</translation>
    </message>
    <message>
        <source>Show</source>
        <translation>Zeigen</translation>
    </message>
    <message>
        <source>Show again: {name}</source>
        <translation>Wieder zeigen: {name}</translation>
    </message>
</context>
<context>
    <name>ImportHistory</name>
    <message>
        <source>Brought in so far</source>
        <translation>Bisher eingelesen</translation>
    </message>
    <message>
        <source>{source}, {day}: {summary}</source>
        <translation>{source}, {day}: {summary}</translation>
    </message>
    <message>
        <source>Take out {source} and the {count} brought in after it</source>
        <translation>{source} und {count} später Eingelesene herausnehmen</translation>
    </message>
    <message>
        <source>Take out {source}</source>
        <translation>{source} herausnehmen</translation>
    </message>
    <message>
        <source>Take out</source>
        <translation>Herausnehmen</translation>
    </message>
</context>
<context>
    <name>ImportSheet</name>
    <message>
        <source>What the rows are</source>
        <translation>Was die Zeilen sind</translation>
    </message>
    <message>
        <source>Choose a file</source>
        <translation>Datei wählen</translation>
    </message>
    <message>
        <source>Match the columns</source>
        <translation>Spalten zuordnen</translation>
    </message>
    <message>
        <source>Bring in</source>
        <translation>Einlesen</translation>
    </message>
    <message>
        <source>Let it be</source>
        <translation>Doch nicht</translation>
    </message>
    <message>
        <source>A spreadsheet or an instrument&apos;s export</source>
        <translation>Eine Tabelle oder die Ausgabe eines Messgeräts</translation>
    </message>
    <message>
        <source>Tables and measurements</source>
        <translation>Tabellen und Messungen</translation>
    </message>
    <message>
        <source>Brought in. Undo takes it out again.</source>
        <translation>Eingelesen. Rückgängig nimmt es wieder heraus.</translation>
    </message>
    <message>
        <source>Bring in {source}</source>
        <translation>{source} einlesen</translation>
    </message>
    <message>
        <source>Reading the file</source>
        <translation>Die Datei wird gelesen</translation>
    </message>
    <message>
        <source>Drop a spreadsheet (CSV) or an instrument&apos;s export (CGATS, CxF) here, or choose one. You see what it changes before anything is changed.</source>
        <translation>Ziehen Sie eine Tabelle (CSV) oder die Ausgabe eines Messgeräts (CGATS, CxF) hierher, oder wählen Sie eine. Sie sehen, was sich ändert, bevor sich etwas ändert.</translation>
    </message>
    <message>
        <source>Rows that name no kind are</source>
        <translation>Zeilen, die keine Art nennen, sind</translation>
    </message>
    <message>
        <source>and {count} more changes</source>
        <translation>und {count} weitere Änderungen</translation>
    </message>
    <message>
        <source>{code}: new</source>
        <translation>{code}: neu</translation>
    </message>
    <message>
        <source>{new} new, {changed} changed, {same} as they are.</source>
        <translation>{new} neu, {changed} geändert, {same} unverändert.</translation>
    </message>
</context>
<context>
    <name>IntakeCameraView</name>
    <message>
        <source>Freeze</source>
        <translation>Festhalten</translation>
    </message>
    <message>
        <source>This is the plain sheet</source>
        <translation>Das ist das leere Blatt</translation>
    </message>
    <message>
        <source>Another camera</source>
        <translation>Andere Kamera</translation>
    </message>
    <message>
        <source>Put the camera away</source>
        <translation>Kamera weglegen</translation>
    </message>
    <message>
        <source>Keep everything still: {share} % of the frames are taken.</source>
        <translation>Alles still halten: {share} % der Bilder sind aufgenommen.</translation>
    </message>
    <message>
        <source>Waiting for the camera.</source>
        <translation>Die Kamera wird erwartet.</translation>
    </message>
    <message>
        <source>Freeze takes the mean of 16 frames, which has a quarter of their noise. Keep hands, art and lamps still.</source>
        <translation>Festhalten mittelt 16 Bilder, das lässt ein Viertel ihres Rauschens. Halten Sie Hände, Bild und Lampen still.</translation>
    </message>
</context>
<context>
    <name>IntakeShelf</name>
    <message>
        <source>Intake</source>
        <translation>Annahme</translation>
    </message>
    <message>
        <source>New photograph arrived: {name}</source>
        <translation>Neues Foto eingetroffen: {name}</translation>
    </message>
    <message>
        <source>Open {name}</source>
        <translation>{name} öffnen</translation>
    </message>
    <message>
        <source>Square up and correct</source>
        <translation>Geraderichten und korrigieren</translation>
    </message>
    <message>
        <source>Find corners and chart</source>
        <translation>Ecken und Farbkarte suchen</translation>
    </message>
    <message>
        <source>Back to the photograph as it is</source>
        <translation>Zurück zum Foto, wie es ist</translation>
    </message>
    <message>
        <source>Mark</source>
        <translation>Markieren</translation>
    </message>
    <message>
        <source>The art</source>
        <translation>Das Werk</translation>
    </message>
    <message>
        <source>The chart</source>
        <translation>Die Farbkarte</translation>
    </message>
    <message>
        <source>A grey</source>
        <translation>Ein Grau</translation>
    </message>
    <message>
        <source>Look</source>
        <translation>Schauen</translation>
    </message>
    <message>
        <source>Corners</source>
        <translation>Ecken</translation>
    </message>
    <message>
        <source>Before, after</source>
        <translation>Vorher, nachher</translation>
    </message>
    <message>
        <source>Mark by hand</source>
        <translation>Von Hand markieren</translation>
    </message>
    <message>
        <source>Drag a corner. N takes the next one, the arrows move it by a pixel.</source>
        <translation>Ziehen Sie eine Ecke. N nimmt die nächste, die Pfeiltasten bewegen sie um ein Pixel.</translation>
    </message>
    <message>
        <source>Look at</source>
        <translation>Ansicht</translation>
    </message>
    <message>
        <source>Photograph of a plain sheet</source>
        <translation>Foto eines leeren Blattes</translation>
    </message>
    <message>
        <source>Leave the light as it is</source>
        <translation>Licht lassen, wie es ist</translation>
    </message>
    <message>
        <source>Even out the light</source>
        <translation>Licht ausgleichen</translation>
    </message>
    <message>
        <source>How large the art is</source>
        <translation>Wie groß das Werk ist</translation>
    </message>
    <message>
        <source>Leave it empty for not yet. Measure exactly later, twice.</source>
        <translation>Leer lassen für noch nicht. Genau gemessen wird später, zweimal.</translation>
    </message>
    <message>
        <source>Width of the chart&apos;s patches</source>
        <translation>Breite der Felder der Farbkarte</translation>
    </message>
    <message>
        <source>Or by the chart: width of its patches</source>
        <translation>Oder nach der Farbkarte: Breite ihrer Felder</translation>
    </message>
    <message>
        <source>Where it lies level with the art it gives the size, or checks yours.</source>
        <translation>Wo sie auf gleicher Höhe mit dem Werk liegt, ergibt sie die Größe oder prüft Ihre.</translation>
    </message>
    <message>
        <source>Photographs</source>
        <translation>Fotos</translation>
    </message>
    <message>
        <source>Open another</source>
        <translation>Ein anderes öffnen</translation>
    </message>
    <message>
        <source>Camera above the table</source>
        <translation>Kamera über dem Tisch</translation>
    </message>
    <message>
        <source>Watch a folder</source>
        <translation>Ordner beobachten</translation>
    </message>
    <message>
        <source>New photographs in a watched folder are offered as they arrive.</source>
        <translation>Neue Fotos in einem beobachteten Ordner werden angeboten, sobald sie da sind.</translation>
    </message>
    <message>
        <source>Bring the picture first.</source>
        <translation>Bringen Sie erst das Bild.</translation>
    </message>
    <message>
        <source>Least sure patches (upper half seen, lower half should be)</source>
        <translation>Unsicherste Felder (obere Hälfte gesehen, untere wie sie sein sollte)</translation>
    </message>
    <message>
        <source>A white or grey sheet, photographed from the same place under the same light, tells how the light falls off.</source>
        <translation>Ein weißes oder graues Blatt, vom selben Ort unter demselben Licht fotografiert, sagt, wie das Licht abfällt.</translation>
    </message>
    <message>
        <source>Drop, paste or open a photograph of the art.</source>
        <translation>Ziehen Sie ein Foto des Werks hierher, fügen Sie es ein oder öffnen Sie es.</translation>
    </message>
    <message>
        <source>Even light without glare on the chart would raise it further.</source>
        <translation>Gleichmäßiges Licht ohne Glanz auf der Farbkarte würde es weiter heben.</translation>
    </message>
    <message>
        <source>What would raise it: put the colour chart beside the art, flat and out of glare, and take the photograph again. Next best is a grey card to pick from.</source>
        <translation>Was es heben würde: Legen Sie die Farbkarte flach und ohne Glanz neben das Bild und fotografieren Sie noch einmal. Das Nächstbeste ist eine Graukarte.</translation>
    </message>
</context>
<context>
    <name>IntakeStep</name>
    <message>
        <source>no picture yet</source>
        <translation>noch kein Bild</translation>
    </message>
    <message>
        <source>size not known yet</source>
        <translation>Größe noch unbekannt</translation>
    </message>
    <message>
        <source>colours not checked</source>
        <translation>Farben nicht geprüft</translation>
    </message>
    <message>
        <source>taken in</source>
        <translation>aufgenommen</translation>
    </message>
    <message>
        <source>Watched: {folder}</source>
        <translation>Beobachtet: {folder}</translation>
    </message>
    <message>
        <source>The chart&apos;s corners</source>
        <translation>Ecken der Farbkarte</translation>
    </message>
    <message>
        <source>The art&apos;s corners</source>
        <translation>Ecken des Werks</translation>
    </message>
    <message>
        <source>Pick a grey</source>
        <translation>Ein Grau wählen</translation>
    </message>
    <message>
        <source>Write a width above zero.</source>
        <translation>Schreiben Sie eine Breite über null.</translation>
    </message>
    <message>
        <source>The chart&apos;s width</source>
        <translation>Breite der Farbkarte</translation>
    </message>
    <message>
        <source>Find corners and chart</source>
        <translation>Ecken und Farbkarte suchen</translation>
    </message>
    <message>
        <source>The photograph as it is</source>
        <translation>Das Foto, wie es ist</translation>
    </message>
    <message>
        <source>Which photograph shows the plain sheet?</source>
        <translation>Welches Foto zeigt das leere Blatt?</translation>
    </message>
    <message>
        <source>Leave the light as it is</source>
        <translation>Licht lassen, wie es ist</translation>
    </message>
    <message>
        <source>Watch which folder?</source>
        <translation>Welchen Ordner beobachten?</translation>
    </message>
    <message>
        <source>Open another</source>
        <translation>Ein anderes öffnen</translation>
    </message>
</context>
<context>
    <name>IntakeView</name>
    <message>
        <source>upper left</source>
        <translation>oben links</translation>
    </message>
    <message>
        <source>upper right</source>
        <translation>oben rechts</translation>
    </message>
    <message>
        <source>lower right</source>
        <translation>unten rechts</translation>
    </message>
    <message>
        <source>lower left</source>
        <translation>unten links</translation>
    </message>
    <message>
        <source>as photographed</source>
        <translation>wie fotografiert</translation>
    </message>
    <message>
        <source>taken in</source>
        <translation>aufgenommen</translation>
    </message>
    <message>
        <source>The art&apos;s corners</source>
        <translation>Ecken des Werks</translation>
    </message>
    <message>
        <source>The chart&apos;s corners</source>
        <translation>Ecken der Farbkarte</translation>
    </message>
    <message>
        <source>Pick a neutral grey</source>
        <translation>Ein neutrales Grau wählen</translation>
    </message>
    <message>
        <source>Before and after</source>
        <translation>Vorher und nachher</translation>
    </message>
    <message>
        <source>The photograph: {told}</source>
        <translation>Das Foto: {told}</translation>
    </message>
</context>
<context>
    <name>Intaking</name>
    <message>
        <source>Even out by a plain sheet</source>
        <translation>Mit einem leeren Blatt ausgleichen</translation>
    </message>
</context>
<context>
    <name>JobBook</name>
    <message>
        <source>The backup is in its place; {count} newer jobs came along.</source>
        <translation>Die Sicherung ist an ihrem Platz; {count} neuere Aufträge kamen mit.</translation>
    </message>
    <message>
        <source>The backup is in its place; 1 newer job came along.</source>
        <translation>Die Sicherung ist an ihrem Platz; 1 neuerer Auftrag kam mit.</translation>
    </message>
    <message>
        <source>What was there before is kept as {name}.</source>
        <translation>Was vorher da war, ist als {name} aufgehoben.</translation>
    </message>
    <message>
        <source>Saved now, after waiting on this computer: {numbers}.</source>
        <translation>Jetzt gesichert, nach Warten auf diesem Rechner: {numbers}.</translation>
    </message>
    <message>
        <source>On this computer alone, because another counter changed the same: {numbers}. Open it from the job book and choose.</source>
        <translation>Nur auf diesem Rechner, weil ein anderer Platz dasselbe geändert hat: {numbers}. Öffnen Sie es aus dem Auftragsbuch und wählen Sie.</translation>
    </message>
</context>
<context>
    <name>JobCard</name>
    <message>
        <source>Open</source>
        <translation>Öffnen</translation>
    </message>
    <message>
        <source>Open the job</source>
        <translation>Auftrag öffnen</translation>
    </message>
    <message>
        <source>Copy</source>
        <translation>Kopieren</translation>
    </message>
    <message>
        <source>Copy the job under a new number</source>
        <translation>Auftrag unter neuer Nummer kopieren</translation>
    </message>
    <message>
        <source>Into a file</source>
        <translation>In eine Datei</translation>
    </message>
    <message>
        <source>Put the job into a file of its own</source>
        <translation>Auftrag in eine eigene Datei legen</translation>
    </message>
    <message>
        <source>Open a job from a file</source>
        <translation>Auftrag aus einer Datei öffnen</translation>
    </message>
    <message>
        <source>Status</source>
        <translation>Status</translation>
    </message>
    <message>
        <source>Something decided</source>
        <translation>Etwas wurde entschieden</translation>
    </message>
    <message>
        <source>Add a line to the history</source>
        <translation>Dem Verlauf eine Zeile hinzufügen</translation>
    </message>
    <message>
        <source>Choose a job to see it here.</source>
        <translation>Wählen Sie einen Auftrag, um ihn hier zu sehen.</translation>
    </message>
    <message>
        <source>Where the job stands</source>
        <translation>Stand des Auftrags</translation>
    </message>
    <message>
        <source>What was decided</source>
        <translation>Was entschieden wurde</translation>
    </message>
    <message>
        <source>Jobs (*{ending})</source>
        <translation>Aufträge (*{ending})</translation>
    </message>
    <message>
        <source>Put the job into a file</source>
        <translation>Auftrag in eine Datei legen</translation>
    </message>
    <message>
        <source>begun {day}</source>
        <translation>begonnen {day}</translation>
    </message>
    <message>
        <source>on the desk</source>
        <translation>auf dem Tisch</translation>
    </message>
</context>
<context>
    <name>JobFields</name>
    <message>
        <source>the title</source>
        <translation>der Titel</translation>
    </message>
    <message>
        <source>the client</source>
        <translation>der Kunde</translation>
    </message>
    <message>
        <source>the photograph</source>
        <translation>das Foto</translation>
    </message>
    <message>
        <source>the intake</source>
        <translation>die Annahme</translation>
    </message>
    <message>
        <source>the regions</source>
        <translation>die Bereiche</translation>
    </message>
    <message>
        <source>the size</source>
        <translation>die Größe</translation>
    </message>
    <message>
        <source>the measurements</source>
        <translation>die Messungen</translation>
    </message>
    <message>
        <source>the designs</source>
        <translation>die Entwürfe</translation>
    </message>
    <message>
        <source>the choice</source>
        <translation>die Wahl</translation>
    </message>
    <message>
        <source>the status</source>
        <translation>der Status</translation>
    </message>
    <message>
        <source>what is kept</source>
        <translation>das Gemerkte</translation>
    </message>
    <message>
        <source>the catalogue</source>
        <translation>der Katalog</translation>
    </message>
    <message>
        <source>the note</source>
        <translation>die Notiz</translation>
    </message>
    <message>
        <source>nothing</source>
        <translation>nichts</translation>
    </message>
    <message>
        <source>no design agreed on</source>
        <translation>kein Entwurf vereinbart</translation>
    </message>
    <message>
        <source>corners and chart of its own</source>
        <translation>eigene Ecken und Farbkarte</translation>
    </message>
</context>
<context>
    <name>JobLine</name>
    <message>
        <source>colours good enough to choose between whites</source>
        <translation>Farben gut genug, um zwischen Weißtönen zu wählen</translation>
    </message>
    <message>
        <source>colours good enough to choose between neighbouring hues</source>
        <translation>Farben gut genug, um zwischen benachbarten Tönen zu wählen</translation>
    </message>
    <message>
        <source>colours good for broad families only</source>
        <translation>Farben nur für grobe Familien gut</translation>
    </message>
    <message>
        <source>colours not checked</source>
        <translation>Farben nicht geprüft</translation>
    </message>
    <message>
        <source>Search   /</source>
        <translation>Suchen   /</translation>
    </message>
    <message>
        <source>Search the samples</source>
        <translation>Muster suchen</translation>
    </message>
    <message>
        <source>Nothing to undo</source>
        <translation>Nichts rückgängig zu machen</translation>
    </message>
    <message>
        <source>Nothing to redo</source>
        <translation>Nichts wiederherzustellen</translation>
    </message>
    <message>
        <source>The rail, away or back</source>
        <translation>Das Bord, weg oder her</translation>
    </message>
    <message>
        <source>The shelf, away or back</source>
        <translation>Das Regal, weg oder her</translation>
    </message>
    <message>
        <source>No picture yet</source>
        <translation>Noch kein Bild</translation>
    </message>
    <message>
        <source>Undo</source>
        <translation>Rückgängig</translation>
    </message>
    <message>
        <source>Undo: nothing</source>
        <translation>Rückgängig: nichts</translation>
    </message>
    <message>
        <source>Redo</source>
        <translation>Wiederholen</translation>
    </message>
    <message>
        <source>Redo: nothing</source>
        <translation>Wiederholen: nichts</translation>
    </message>
    <message>
        <source>size not known yet</source>
        <translation>Größe noch unbekannt</translation>
    </message>
</context>
<context>
    <name>JobRows</name>
    <message>
        <source>on this computer alone</source>
        <translation>nur auf diesem Rechner</translation>
    </message>
    <message>
        <source>today {time}</source>
        <translation>heute {time}</translation>
    </message>
    <message>
        <source>yesterday {time}</source>
        <translation>gestern {time}</translation>
    </message>
</context>
<context>
    <name>KeysSheet</name>
    <message>
        <source>Everywhere</source>
        <translation>Überall</translation>
    </message>
    <message>
        <source>go to a step of the job</source>
        <translation>zu einem Schritt des Auftrags gehen</translation>
    </message>
    <message>
        <source>Ctrl+1 … 6</source>
        <translation>Strg+1 … 6</translation>
    </message>
    <message>
        <source>undo, redo</source>
        <translation>rückgängig, wiederholen</translation>
    </message>
    <message>
        <source>Ctrl+Z, Ctrl+Shift+Z</source>
        <translation>Strg+Z, Strg+⇧+Z</translation>
    </message>
    <message>
        <source>open a photograph or a job</source>
        <translation>Foto oder Auftrag öffnen</translation>
    </message>
    <message>
        <source>Ctrl+O</source>
        <translation>Strg+O</translation>
    </message>
    <message>
        <source>paste a picture</source>
        <translation>Bild einfügen</translation>
    </message>
    <message>
        <source>Ctrl+V</source>
        <translation>Strg+V</translation>
    </message>
    <message>
        <source>put the job into a file</source>
        <translation>Auftrag in eine Datei legen</translation>
    </message>
    <message>
        <source>Ctrl+S</source>
        <translation>Strg+S</translation>
    </message>
    <message>
        <source>search the samples</source>
        <translation>Muster suchen</translation>
    </message>
    <message>
        <source>lay round what rests on the rail</source>
        <translation>umlegen, was auf dem Bord liegt</translation>
    </message>
    <message>
        <source>Ctrl+K</source>
        <translation>Strg+K</translation>
    </message>
    <message>
        <source>keep the design in hand, or what is laid round</source>
        <translation>den Entwurf oder das Umgelegte merken</translation>
    </message>
    <message>
        <source>the rack, the job book, and back</source>
        <translation>Sortiment, Auftragsbuch und zurück</translation>
    </message>
    <message>
        <source>put rail or shelf away, or bring it back</source>
        <translation>Bord oder Regal weglegen oder zurückholen</translation>
    </message>
    <message>
        <source>the client&apos;s view</source>
        <translation>die Kundenansicht</translation>
    </message>
    <message>
        <source>this sheet</source>
        <translation>diese Tafel</translation>
    </message>
    <message>
        <source>let go of what is in hand</source>
        <translation>loslassen, was in der Hand ist</translation>
    </message>
    <message>
        <source>The picture</source>
        <translation>Das Bild</translation>
    </message>
    <message>
        <source>closer, farther, all of it</source>
        <translation>näher, weiter weg, alles</translation>
    </message>
    <message>
        <source>Space</source>
        <translation>Leertaste</translation>
    </message>
    <message>
        <source>blink between the two last looks</source>
        <translation>zwischen den letzten zwei Ansichten blinken</translation>
    </message>
    <message>
        <source>A sample on the shelf</source>
        <translation>Ein Muster im Regal</translation>
    </message>
    <message>
        <source>the one before, the next one</source>
        <translation>das davor, das nächste</translation>
    </message>
    <message>
        <source>Enter</source>
        <translation>Enter</translation>
    </message>
    <message>
        <source>lay it round the picture</source>
        <translation>um das Bild legen</translation>
    </message>
    <message>
        <source>slide it over the picture</source>
        <translation>über das Bild schieben</translation>
    </message>
    <message>
        <source>keep it on the rail</source>
        <translation>auf dem Bord merken</translation>
    </message>
    <message>
        <source>send it away</source>
        <translation>weglegen</translation>
    </message>
    <message>
        <source>the measures behind the reasons</source>
        <translation>die Messwerte hinter den Gründen</translation>
    </message>
    <message>
        <source>which of two for this picture, the taste card</source>
        <translation>welches von zweien, die Geschmackskarte</translation>
    </message>
    <message>
        <source>Side by side, and which of two</source>
        <translation>Nebeneinander, und welches von zweien</translation>
    </message>
    <message>
        <source>blink between two of the looks</source>
        <translation>zwischen zwei Ansichten blinken</translation>
    </message>
    <message>
        <source>while two blink: the look to show</source>
        <translation>beim Blinken: welche Ansicht</translation>
    </message>
    <message>
        <source>which of two: the first, the second, neither</source>
        <translation>welches: das erste, das zweite, keines</translation>
    </message>
    <message>
        <source>back to all, back to one picture</source>
        <translation>zurück zu allen, zurück zu einem Bild</translation>
    </message>
    <message>
        <source>A strip on the picture</source>
        <translation>Ein Streifen auf dem Bild</translation>
    </message>
    <message>
        <source>Arrows</source>
        <translation>Pfeile</translation>
    </message>
    <message>
        <source>1 mm; with Shift 10 mm</source>
        <translation>1 mm; mit Umschalt 10 mm</translation>
    </message>
    <message>
        <source>turn by 15 degrees, by a quarter</source>
        <translation>um 15 Grad drehen, um ein Viertel</translation>
    </message>
    <message>
        <source>R, Shift+R</source>
        <translation>R, Umschalt+R</translation>
    </message>
    <message>
        <source>bend into a corner, or straighten</source>
        <translation>zur Ecke biegen oder strecken</translation>
    </message>
    <message>
        <source>[ and ]</source>
        <translation>[ und ]</translation>
    </message>
    <message>
        <source>shorter, longer</source>
        <translation>kürzer, länger</translation>
    </message>
    <message>
        <source>Enter, K, X</source>
        <translation>Enter, K, X</translation>
    </message>
    <message>
        <source>lay round, keep, send away</source>
        <translation>umlegen, merken, weglegen</translation>
    </message>
    <message>
        <source>the next strip</source>
        <translation>der nächste Streifen</translation>
    </message>
    <message>
        <source>Delete</source>
        <translation>Entf</translation>
    </message>
    <message>
        <source>take it up</source>
        <translation>aufnehmen</translation>
    </message>
    <message>
        <source>Drawing regions</source>
        <translation>Bereiche zeichnen</translation>
    </message>
    <message>
        <source>hand, rectangle, ellipse, lasso, polygon, grow</source>
        <translation>Hand, Rechteck, Ellipse, Lasso, Vieleck, Wachsen</translation>
    </message>
    <message>
        <source>Shift, Alt</source>
        <translation>Umschalt, Alt</translation>
    </message>
    <message>
        <source>while drawing: add to the region, cut from it</source>
        <translation>beim Zeichnen: zum Bereich dazu, davon weg</translation>
    </message>
    <message>
        <source>Enter, Esc</source>
        <translation>Enter, Esc</translation>
    </message>
    <message>
        <source>close a polygon, drop it</source>
        <translation>Vieleck schließen, fallen lassen</translation>
    </message>
    <message>
        <source>push the chosen region</source>
        <translation>den gewählten Bereich schieben</translation>
    </message>
    <message>
        <source>delete it</source>
        <translation>löschen</translation>
    </message>
    <message>
        <source>The section in Build</source>
        <translation>Der Schnitt im Aufbau</translation>
    </message>
    <message>
        <source>the part farther out, the part farther in</source>
        <translation>der Teil weiter außen, weiter innen</translation>
    </message>
    <message>
        <source>move the part in the stack</source>
        <translation>den Teil im Aufbau verschieben</translation>
    </message>
    <message>
        <source>show more of it, show less</source>
        <translation>mehr davon zeigen, weniger</translation>
    </message>
    <message>
        <source>take the part out</source>
        <translation>den Teil herausnehmen</translation>
    </message>
    <message>
        <source>The rack</source>
        <translation>Das Sortiment</translation>
    </message>
    <message>
        <source>the nearest sample in a direction</source>
        <translation>das nächste Muster in einer Richtung</translation>
    </message>
    <message>
        <source>the next colour of the picture, the one before</source>
        <translation>die nächste Farbe des Bildes, die davor</translation>
    </message>
    <message>
        <source>L, Space</source>
        <translation>L, Leertaste</translation>
    </message>
    <message>
        <source>a lasso, or one sample, to lay side by side</source>
        <translation>ein Lasso oder ein Muster zum Nebeneinanderlegen</translation>
    </message>
    <message>
        <source>closer, farther, all that is wanted</source>
        <translation>näher, weiter weg, alles Gewünschte</translation>
    </message>
    <message>
        <source>Page up, down</source>
        <translation>Bild auf, ab</translation>
    </message>
    <message>
        <source>another slice of lightness, on the lightness bar</source>
        <translation>ein anderer Ausschnitt der Helligkeit</translation>
    </message>
    <message>
        <source>let go of what is looked near</source>
        <translation>loslassen, in dessen Nähe gesucht wird</translation>
    </message>
    <message>
        <source>Keys</source>
        <translation>Tasten</translation>
    </message>
    <message>
        <source>The tour again</source>
        <translation>Noch einmal die Runde</translation>
    </message>
    <message>
        <source>Put the sheet away</source>
        <translation>Tafel weglegen</translation>
    </message>
</context>
<context>
    <name>KindWords</name>
    <message>
        <source>Mats</source>
        <translation>Passepartouts</translation>
    </message>
    <message>
        <source>Wrapped fillets</source>
        <translation>Bezogene Filets</translation>
    </message>
    <message>
        <source>Wood fillets</source>
        <translation>Holzfilets</translation>
    </message>
    <message>
        <source>Liners</source>
        <translation>Einlageleisten</translation>
    </message>
    <message>
        <source>Mouldings</source>
        <translation>Leisten</translation>
    </message>
</context>
<context>
    <name>KnownPatch</name>
    <message>
        <source>A grey patch among fine lines</source>
        <translation>Ein graues Feld zwischen feinen Linien</translation>
    </message>
</context>
<context>
    <name>Ledger</name>
    <message>
        <source>This is the copy, not measured yet and open.</source>
        <translation>Das ist die Kopie, noch nicht gemessen und offen.</translation>
    </message>
    <message>
        <source>It is in the file {name}.</source>
        <translation>Er liegt in der Datei {name}.</translation>
    </message>
    <message>
        <source>Status of the job</source>
        <translation>Status des Auftrags</translation>
    </message>
    <message>
        <source>A line of the history</source>
        <translation>Eine Zeile des Verlaufs</translation>
    </message>
</context>
<context>
    <name>LengthField</name>
    <message>
        <source>about </source>
        <translation>etwa </translation>
    </message>
</context>
<context>
    <name>LevelMap</name>
    <message>
        <source>L* {low:.0f} to {high:.0f}: {count:,}</source>
        <translation>L* {low:.0f} bis {high:.0f}: {count:,}</translation>
    </message>
    <message>
        <source>Show these on the map; once more shows every lightness again</source>
        <translation>Diese auf der Karte zeigen; noch einmal zeigt wieder jede Helligkeit</translation>
    </message>
</context>
<context>
    <name>LightBar</name>
    <message>
        <source>Seen under</source>
        <translation>Gesehen unter</translation>
    </message>
    <message>
        <source>No two colours here match so closely that a light could part them.</source>
        <translation>Keine zwei Farben gleichen sich hier so sehr, dass ein Licht sie trennen könnte.</translation>
    </message>
</context>
<context>
    <name>LightCard</name>
    <message>
        <source>At home under</source>
        <translation>Zu Hause unter</translation>
    </message>
    <message>
        <source>Estimated: no reflectance of it was measured.</source>
        <translation>Geschätzt: Kein Reflexionsgrad davon wurde gemessen.</translation>
    </message>
</context>
<context>
    <name>LightPicker</name>
    <message>
        <source>The light in which it is seen</source>
        <translation>Das Licht, in dem es gesehen wird</translation>
    </message>
</context>
<context>
    <name>LightStatement</name>
    <message>
        <source>Light</source>
        <translation>Licht</translation>
    </message>
    <message>
        <source>Not known</source>
        <translation>Nicht bekannt</translation>
    </message>
    <message>
        <source>Observer</source>
        <translation>Beobachter</translation>
    </message>
    <message>
        <source>2 degrees</source>
        <translation>2 Grad</translation>
    </message>
    <message>
        <source>10 degrees</source>
        <translation>10 Grad</translation>
    </message>
    <message>
        <source>For which light do its colours hold?</source>
        <translation>Für welches Licht gelten die Farben?</translation>
    </message>
    <message>
        <source>The file does not say. A wrong guess would be believed everywhere, so the colours are taken only when you know; what you state is kept with them.</source>
        <translation>Die Datei sagt es nicht. Eine falsche Vermutung würde überall geglaubt; die Farben werden deshalb nur übernommen, wenn Sie es wissen. Was Sie angeben, wird mit ihnen aufgehoben.</translation>
    </message>
</context>
<context>
    <name>LightnessBar</name>
    <message>
        <source>Drag to show one slice of lightness; double-click to show all  (Page keys)</source>
        <translation>Ziehen zeigt einen Ausschnitt der Helligkeit; Doppelklick zeigt alle  (Bild auf, ab)</translation>
    </message>
    <message>
        <source>light</source>
        <translation>hell</translation>
    </message>
    <message>
        <source>dark</source>
        <translation>dunkel</translation>
    </message>
    <message>
        <source>all</source>
        <translation>alle</translation>
    </message>
    <message>
        <source>L* {low:.0f} to {high:.0f}</source>
        <translation>L* {low:.0f} bis {high:.0f}</translation>
    </message>
    <message>
        <source>Lightness shown: {told}</source>
        <translation>Gezeigte Helligkeit: {told}</translation>
    </message>
</context>
<context>
    <name>LookView</name>
    <message>
        <source>The picture with {title}</source>
        <translation>Das Bild mit {title}</translation>
    </message>
</context>
<context>
    <name>MapBar</name>
    <message>
        <source>Lay side by side what a lasso holds</source>
        <translation>Nebeneinanderlegen, was ein Lasso hält</translation>
    </message>
    <message>
        <source>Look from farther away</source>
        <translation>Von weiter weg schauen</translation>
    </message>
    <message>
        <source>Show all that is wanted</source>
        <translation>Alles Gewünschte zeigen</translation>
    </message>
    <message>
        <source>Look closer</source>
        <translation>Näher schauen</translation>
    </message>
</context>
<context>
    <name>Marks</name>
    <message>
        <source>Favourite</source>
        <translation>Liebling</translation>
    </message>
    <message>
        <source>Out of stock</source>
        <translation>Nicht vorrätig</translation>
    </message>
    <message>
        <source>Hide</source>
        <translation>Verbergen</translation>
    </message>
    <message>
        <source>Hide the sample from every list</source>
        <translation>Das Muster in allen Listen verbergen</translation>
    </message>
    <message>
        <source>Edit</source>
        <translation>Ändern</translation>
    </message>
    <message>
        <source>Edit name and price</source>
        <translation>Name und Preis ändern</translation>
    </message>
    <message>
        <source>Name</source>
        <translation>Name</translation>
    </message>
    <message>
        <source>Price</source>
        <translation>Preis</translation>
    </message>
    <message>
        <source>empty: the maker&apos;s</source>
        <translation>leer: der des Herstellers</translation>
    </message>
    <message>
        <source>Name and price of {name}</source>
        <translation>Name und Preis von {name}</translation>
    </message>
    <message>
        <source>The shop says of {name}:</source>
        <translation>Die Werkstatt sagt zu {name}:</translation>
    </message>
    <message>
        <source>Favourite: {name}</source>
        <translation>Liebling: {name}</translation>
    </message>
    <message>
        <source>Out of stock: {name}</source>
        <translation>Nicht vorrätig: {name}</translation>
    </message>
    <message>
        <source>In stock again: {name}</source>
        <translation>Wieder vorrätig: {name}</translation>
    </message>
    <message>
        <source>Hide {name}</source>
        <translation>{name} verbergen</translation>
    </message>
</context>
<context>
    <name>MatchSheet</name>
    <message>
        <source>Lengths without a unit are</source>
        <translation>Längen ohne Einheit sind</translation>
    </message>
    <message>
        <source>Millimetres</source>
        <translation>Millimeter</translation>
    </message>
    <message>
        <source>Centimetres</source>
        <translation>Zentimeter</translation>
    </message>
    <message>
        <source>Inches</source>
        <translation>Zoll</translation>
    </message>
    <message>
        <source>Decimals come after</source>
        <translation>Dezimalen stehen nach</translation>
    </message>
    <message>
        <source>What the file uses</source>
        <translation>Was die Datei benutzt</translation>
    </message>
    <message>
        <source>A point</source>
        <translation>einem Punkt</translation>
    </message>
    <message>
        <source>A comma</source>
        <translation>einem Komma</translation>
    </message>
    <message>
        <source>Back to the map</source>
        <translation>Zurück zur Karte</translation>
    </message>
    <message>
        <source>not in the file</source>
        <translation>nicht in der Datei</translation>
    </message>
    <message>
        <source>Not taken: {names}.</source>
        <translation>Nicht übernommen: {names}.</translation>
    </message>
    <message>
        <source>the whole row</source>
        <translation>die ganze Zeile</translation>
    </message>
    <message>
        <source>Row {row}, {where}: {reason}.</source>
        <translation>Zeile {row}, {where}: {reason}.</translation>
    </message>
    <message>
        <source>Which column is which</source>
        <translation>Welche Spalte was ist</translation>
    </message>
    <message>
        <source>The first rows as they are read</source>
        <translation>Die ersten Zeilen, wie sie gelesen werden</translation>
    </message>
    <message>
        <source>All rows</source>
        <translation>Alle Zeilen</translation>
    </message>
</context>
<context>
    <name>MeasureStage</name>
    <message>
        <source>Measure both again</source>
        <translation>Beide neu messen</translation>
    </message>
    <message>
        <source>Measure twice, cut once</source>
        <translation>Zweimal messen, einmal schneiden</translation>
    </message>
    <message>
        <source>Two measurements, best by two people. The first card turns away when it is done, so that the second is taken without seeing it.</source>
        <translation>Zwei Messungen, am besten von zwei Leuten. Die erste Karte dreht sich um, wenn sie fertig ist, damit die zweite entsteht, ohne sie zu sehen.</translation>
    </message>
    <message>
        <source>Measurement {number} of 2</source>
        <translation>Messung {number} von 2</translation>
    </message>
    <message>
        <source>Measurement {number} of 2 of {piece}</source>
        <translation>Messung {number} von 2: {piece}</translation>
    </message>
    <message>
        <source>Measure again</source>
        <translation>Neu messen</translation>
    </message>
    <message>
        <source>They do not agree.</source>
        <translation>Sie stimmen nicht überein.</translation>
    </message>
    <message>
        <source>They agree.</source>
        <translation>Sie stimmen überein.</translation>
    </message>
    <message>
        <source>Piece of art</source>
        <translation>Werk im Rahmen</translation>
    </message>
    <message>
        <source>Art {number}: {count} of 2</source>
        <translation>Werk {number}: {count} von 2</translation>
    </message>
    <message>
        <source>Art {number}: agrees</source>
        <translation>Werk {number}: stimmt</translation>
    </message>
    <message>
        <source>Art {number}: at odds</source>
        <translation>Werk {number}: stimmt nicht</translation>
    </message>
    <message>
        <source>Openings go by {size}, the smaller of both readings.</source>
        <translation>Ausschnitte richten sich nach {size}, dem kleineren beider Werte.</translation>
    </message>
    <message>
        <source>Diagonals were not taken, so a lean was not looked for.</source>
        <translation>Diagonalen wurden nicht gemessen; ob es schief ist, wurde nicht geprüft.</translation>
    </message>
    <message>
        <source>The diagonals say that it is square.</source>
        <translation>Die Diagonalen sagen, dass es rechtwinklig ist.</translation>
    </message>
    <message>
        <source>It leans by {lean}; openings were made safe for that.</source>
        <translation>Es ist um {lean} schief; die Ausschnitte sind darauf eingerichtet.</translation>
    </message>
    <message>
        <source>First measurement</source>
        <translation>Erste Messung</translation>
    </message>
    <message>
        <source>Second measurement</source>
        <translation>Zweite Messung</translation>
    </message>
    <message>
        <source>First measurement of {piece}</source>
        <translation>Erste Messung: {piece}</translation>
    </message>
    <message>
        <source>Second measurement of {piece}</source>
        <translation>Zweite Messung: {piece}</translation>
    </message>
    <message>
        <source>Bring the picture first.</source>
        <translation>Bringen Sie erst das Bild.</translation>
    </message>
    <message>
        <source>Measure the art itself.</source>
        <translation>Messen Sie das Werk selbst.</translation>
    </message>
    <message>
        <source>Waits until the first is done.</source>
        <translation>Wartet, bis die erste fertig ist.</translation>
    </message>
    <message>
        <source>Measure anew, without asking for the first.</source>
        <translation>Messen Sie neu, ohne nach der ersten zu fragen.</translation>
    </message>
    <message>
        <source>Taken by {hand} at {time}.</source>
        <translation>Gemessen von {hand} um {time}.</translation>
    </message>
</context>
<context>
    <name>MeasureStep</name>
    <message>
        <source>both measurements agree</source>
        <translation>beide Messungen stimmen überein</translation>
    </message>
    <message>
        <source>{taken} of {needed} measurements</source>
        <translation>{taken} von {needed} Messungen</translation>
    </message>
</context>
<context>
    <name>Measures</name>
    <message>
        <source>not known</source>
        <translation>nicht bekannt</translation>
    </message>
    <message>
        <source>none</source>
        <translation>nichts</translation>
    </message>
    <message>
        <source>Repeats</source>
        <translation>Wiederholt</translation>
    </message>
    <message>
        <source>How close the sample comes to the colour of the picture that it repeats best. Under 3 most eyes call it the same colour; over 12 hardly anybody does.</source>
        <translation>Wie nahe das Muster der Farbe des Bildes kommt, die es am besten wiederholt. Unter 3 nennen die meisten Augen es dieselbe Farbe, über 12 kaum eines.</translation>
    </message>
    <message>
        <source>Apart from the edge</source>
        <translation>Abstand vom Rand</translation>
    </message>
    <message>
        <source>How different the sample is from the band of the picture along its edge. Little difference lets it settle, much makes it a border that is seen as itself.</source>
        <translation>Wie verschieden das Muster vom Streifen des Bildes an dessen Rand ist. Wenig Unterschied lässt es ruhig werden, viel macht es zu einem Rand, der für sich gesehen wird.</translation>
    </message>
    <message>
        <source>Pull</source>
        <translation>Zug</translation>
    </message>
    <message>
        <source>How strongly the border would draw the eye, compared with the place where the eye should rest. Above 1 the eye goes to the border first.</source>
        <translation>Wie stark der Rand das Auge zöge, verglichen mit der Stelle, an der das Auge ruhen soll. Über 1 geht das Auge zuerst zum Rand.</translation>
    </message>
    <message>
        <source>Stronger than the art</source>
        <translation>Kräftiger als das Bild</translation>
    </message>
    <message>
        <source>How much more colourful the sample is than the most colourful twentieth of the art. Nought means that the art is at least as strong.</source>
        <translation>Wie viel bunter das Muster ist als das bunteste Zwanzigstel des Werks. Null heißt, dass das Werk mindestens so kräftig ist.</translation>
    </message>
    <message>
        <source>Warmth</source>
        <translation>Wärme</translation>
    </message>
    <message>
        <source>How far a white or neutral is warmer or colder than the whites of the picture. It is the commonest mistake with off-whites; nought means that they agree.</source>
        <translation>Wie weit ein Weiß oder ein neutraler Ton wärmer oder kälter ist als das Weiß des Bildes. Das ist der häufigste Fehler bei gebrochenem Weiß; null heißt, dass beide übereinstimmen.</translation>
    </message>
    <message>
        <source>Harmony</source>
        <translation>Harmonie</translation>
    </message>
    <message>
        <source>How pleasant observers found such pairs of colours in a published study (Ou and Luo, 2006), from about -1.2 to 1.7. It likes sameness, so it never decides alone.</source>
        <translation>Wie angenehm Beobachter solche Farbpaare in einer veröffentlichten Studie fanden (Ou und Luo, 2006), von etwa -1,2 bis 1,7. Sie mag Gleiches und entscheidet deshalb nie allein.</translation>
    </message>
    <message>
        <source>Texture</source>
        <translation>Struktur</translation>
    </message>
    <message>
        <source>How well the sample&apos;s surface goes with the picture&apos;s, both at true scale, from 0 to 1. It is not known while the art&apos;s size or the sample&apos;s photograph is missing.</source>
        <translation>Wie gut die Oberfläche des Musters zu der des Bildes passt, beide im wahren Maßstab, von 0 bis 1. Sie ist nicht bekannt, solange die Größe des Bildes oder das Foto des Musters fehlt.</translation>
    </message>
</context>
<context>
    <name>MeasuresPanel</name>
    <message>
        <source>Choose a sample to see its measures.</source>
        <translation>Wählen Sie ein Muster, um seine Messwerte zu sehen.</translation>
    </message>
</context>
<context>
    <name>MeasuringCard</name>
    <message>
        <source>Diagonals too</source>
        <translation>Auch Diagonalen</translation>
    </message>
    <message>
        <source>Done: turn it away</source>
        <translation>Fertig: umdrehen</translation>
    </message>
    <message>
        <source>Diagonals {first} and {second}</source>
        <translation>Diagonalen {first} und {second}</translation>
    </message>
    <message>
        <source>Width</source>
        <translation>Breite</translation>
    </message>
    <message>
        <source>Height</source>
        <translation>Höhe</translation>
    </message>
    <message>
        <source>Initials</source>
        <translation>Kürzel</translation>
    </message>
    <message>
        <source>From top left</source>
        <translation>Von oben links</translation>
    </message>
    <message>
        <source>From top right</source>
        <translation>Von oben rechts</translation>
    </message>
    <message>
        <source>{what}, first measurement</source>
        <translation>{what}, erste Messung</translation>
    </message>
    <message>
        <source>{what}, second measurement</source>
        <translation>{what}, zweite Messung</translation>
    </message>
</context>
<context>
    <name>NearPage</name>
    <message>
        <source>Samples near it, nearest first</source>
        <translation>Muster in der Nähe, nächste zuerst</translation>
    </message>
    <message>
        <source>Keep</source>
        <translation>Merken</translation>
    </message>
    <message>
        <source>Keep the sample on the rail</source>
        <translation>Das Muster auf dem Bord merken</translation>
    </message>
    <message>
        <source>Side by side</source>
        <translation>Nebeneinander</translation>
    </message>
    <message>
        <source>In the lasso</source>
        <translation>Im Lasso</translation>
    </message>
    <message>
        <source>1 sample</source>
        <translation>1 Muster</translation>
    </message>
    <message>
        <source>{count} samples</source>
        <translation>{count} Muster</translation>
    </message>
    <message>
        <source>None of the samples shown comes within ΔE₀₀&#xa0;{near:.0f}. Show more families, kinds or lightness.</source>
        <translation>Keines der gezeigten Muster kommt in ΔE₀₀ {near:.0f} Nähe. Zeigen Sie mehr Familien, Arten oder Helligkeiten.</translation>
    </message>
    <message>
        <source>Nothing looked at yet</source>
        <translation>Noch nichts angesehen</translation>
    </message>
    <message>
        <source>Click a sample, a ring or a bare spot of the map to see what lies near it. Hold Shift and draw round samples to lay them side by side.</source>
        <translation>Klicken Sie auf ein Muster, einen Ring oder eine freie Stelle der Karte, um zu sehen, was in der Nähe liegt. Mit gehaltener Umschalttaste zeichnen Sie um Muster, um sie nebeneinanderzulegen.</translation>
    </message>
</context>
<context>
    <name>NoticeBar</name>
    <message>
        <source>Put this notice away</source>
        <translation>Diese Meldung weglegen</translation>
    </message>
</context>
<context>
    <name>OptionBoard</name>
    <message>
        <source>There is no design to agree on yet: build one, or let three be found.</source>
        <translation>Noch ist kein Entwurf zu vereinbaren: Bauen Sie einen, oder lassen Sie drei suchen.</translation>
    </message>
</context>
<context>
    <name>OptionCard</name>
    <message>
        <source>Choose this one</source>
        <translation>Diesen wählen</translation>
    </message>
    <message>
        <source>Chosen</source>
        <translation>Gewählt</translation>
    </message>
</context>
<context>
    <name>OptionTabs</name>
    <message>
        <source>Begin another design from this one</source>
        <translation>Von diesem ausgehend einen weiteren Entwurf beginnen</translation>
    </message>
    <message>
        <source>Take this design away</source>
        <translation>Diesen Entwurf wegnehmen</translation>
    </message>
    <message>
        <source>Take in hand: {name}</source>
        <translation>In die Hand nehmen: {name}</translation>
    </message>
</context>
<context>
    <name>PaletteStrip</name>
    <message>
        <source>Palette: {colours}</source>
        <translation>Palette: {colours}</translation>
    </message>
</context>
<context>
    <name>PapersView</name>
    <message>
        <source>Pages</source>
        <translation>Seiten</translation>
    </message>
    <message>
        <source>The page is being set.</source>
        <translation>Die Seite wird gesetzt.</translation>
    </message>
    <message>
        <source>Page {number} of {count}</source>
        <translation>Seite {number} von {count}</translation>
    </message>
</context>
<context>
    <name>Paperwork</name>
    <message>
        <source>Bring the picture and build a design first.</source>
        <translation>Bringen Sie erst das Bild und bauen Sie einen Entwurf.</translation>
    </message>
</context>
<context>
    <name>PartList</name>
    <message>
        <source>Moulding</source>
        <translation>Leiste</translation>
    </message>
    <message>
        <source>frame</source>
        <translation>Rahmen</translation>
    </message>
    <message>
        <source>No glazing</source>
        <translation>Kein Glas</translation>
    </message>
    <message>
        <source>the art stays open to touch and dust</source>
        <translation>das Werk bleibt offen für Berührung und Staub</translation>
    </message>
    <message>
        <source>The art</source>
        <translation>Das Werk</translation>
    </message>
    <message>
        <source>covered on each side by</source>
        <translation>überdeckt je Seite</translation>
    </message>
    <message>
        <source>Board</source>
        <translation>Karton</translation>
    </message>
    <message>
        <source>mount board</source>
        <translation>Trägerkarton</translation>
    </message>
    <message>
        <source>Overlap over the art</source>
        <translation>Überdeckung am Werk</translation>
    </message>
    <message>
        <source>glazing, {thick}</source>
        <translation>Verglasung, {thick}</translation>
    </message>
    <message>
        <source>backing, {thick}</source>
        <translation>Rückwand, {thick}</translation>
    </message>
    <message>
        <source>Width that shows of {name}</source>
        <translation>Sichtbare Breite von {name}</translation>
    </message>
    <message>
        <source>Glazing</source>
        <translation>Verglasung</translation>
    </message>
    <message>
        <source>Glass</source>
        <translation>Glas</translation>
    </message>
    <message>
        <source>Acrylic</source>
        <translation>Acrylglas</translation>
    </message>
    <message>
        <source>None</source>
        <translation>Keine</translation>
    </message>
    <message>
        <source>Farther to the front</source>
        <translation>Weiter nach vorn</translation>
    </message>
    <message>
        <source>Nearer to the art</source>
        <translation>Näher an das Werk</translation>
    </message>
    <message>
        <source>Take the layer out</source>
        <translation>Lage herausnehmen</translation>
    </message>
    <message>
        <source>foot wider by</source>
        <translation>Fuß breiter um</translation>
    </message>
    <message>
        <source>Wider at the foot by</source>
        <translation>Am Fuß breiter um</translation>
    </message>
    <message>
        <source>Overlap</source>
        <translation>Überdeckung</translation>
    </message>
    <message>
        <source>Width of {part}</source>
        <translation>Breite: {part}</translation>
    </message>
    <message>
        <source>Glazing: {name}</source>
        <translation>Verglasung: {name}</translation>
    </message>
    <message>
        <source>Foot of the mat</source>
        <translation>Fuß des Passepartouts</translation>
    </message>
</context>
<context>
    <name>Path</name>
    <message>
        <source>More</source>
        <translation>Mehr</translation>
    </message>
</context>
<context>
    <name>PiecesRow</name>
    <message>
        <source>Pieces of art in one frame</source>
        <translation>Bilder in einem Rahmen</translation>
    </message>
    <message>
        <source>One</source>
        <translation>Eines</translation>
    </message>
    <message>
        <source>Two</source>
        <translation>Zwei</translation>
    </message>
    <message>
        <source>Three</source>
        <translation>Drei</translation>
    </message>
    <message>
        <source>Four</source>
        <translation>Vier</translation>
    </message>
    <message>
        <source>Six</source>
        <translation>Sechs</translation>
    </message>
    <message>
        <source>They stand</source>
        <translation>Sie stehen</translation>
    </message>
    <message>
        <source>In a row</source>
        <translation>In einer Reihe</translation>
    </message>
    <message>
        <source>One below the other</source>
        <translation>Untereinander</translation>
    </message>
    <message>
        <source>In two rows</source>
        <translation>In zwei Reihen</translation>
    </message>
    <message>
        <source>Mat between two openings</source>
        <translation>Steg zwischen zwei Ausschnitten</translation>
    </message>
    <message>
        <source>Mat between</source>
        <translation>Steg dazwischen</translation>
    </message>
</context>
<context>
    <name>PlaceSetting</name>
    <message>
        <source>File or address of a server</source>
        <translation>Datei oder Adresse eines Servers</translation>
    </message>
    <message>
        <source>Where the jobs are kept from the next start on</source>
        <translation>Wo die Aufträge ab dem nächsten Start liegen</translation>
    </message>
    <message>
        <source>Folder of the photographs</source>
        <translation>Ordner der Fotos</translation>
    </message>
    <message>
        <source>Folder of the photographs that all share</source>
        <translation>Ordner der Fotos, den alle teilen</translation>
    </message>
    <message>
        <source>Try it and use it</source>
        <translation>Prüfen und benutzen</translation>
    </message>
    <message>
        <source>This computer&apos;s own file</source>
        <translation>Die eigene Datei dieses Rechners</translation>
    </message>
    <message>
        <source>Now: {address}</source>
        <translation>Jetzt: {address}</translation>
    </message>
    <message>
        <source>The environment names it, so it cannot be changed here.</source>
        <translation>Die Umgebung legt es fest; hier lässt es sich nicht ändern.</translation>
    </message>
    <message>
        <source>Write a file or an address first.</source>
        <translation>Geben Sie zuerst eine Datei oder Adresse an.</translation>
    </message>
    <message>
        <source>Trying it …</source>
        <translation>Wird geprüft …</translation>
    </message>
    <message>
        <source>It is used when the window opens next; {count} jobs are there.</source>
        <translation>Gilt, wenn das Fenster das nächste Mal öffnet; {count} Aufträge sind dort.</translation>
    </message>
    <message>
        <source>This computer&apos;s own file is used when the window opens next.</source>
        <translation>Die eigene Datei dieses Rechners gilt, wenn das Fenster das nächste Mal öffnet.</translation>
    </message>
</context>
<context>
    <name>PreviewPane</name>
    <message>
        <source>The framed picture</source>
        <translation>Das gerahmte Bild</translation>
    </message>
    <message>
        <source>The frame is being drawn.</source>
        <translation>Der Rahmen wird gezeichnet.</translation>
    </message>
</context>
<context>
    <name>PriceKeeper</name>
    <message>
        <source>Take the prices of {name}</source>
        <translation>Die Preise aus {name} übernehmen</translation>
    </message>
    <message>
        <source>The price book is being read.</source>
        <translation>Die Preisliste wird gelesen.</translation>
    </message>
</context>
<context>
    <name>PriceShelf</name>
    <message>
        <source>Back</source>
        <translation>Zurück</translation>
    </message>
    <message>
        <source>Back to the papers</source>
        <translation>Zurück zu den Papieren</translation>
    </message>
    <message>
        <source>Add a charge</source>
        <translation>Posten hinzufügen</translation>
    </message>
    <message>
        <source>Take over a file</source>
        <translation>Datei übernehmen</translation>
    </message>
    <message>
        <source>The tax is</source>
        <translation>Die Steuer ist</translation>
    </message>
    <message>
        <source>Added</source>
        <translation>Aufgeschlagen</translation>
    </message>
    <message>
        <source>Within the rates</source>
        <translation>In den Sätzen enthalten</translation>
    </message>
    <message>
        <source>The price book is being read.</source>
        <translation>Die Preisliste wird gelesen.</translation>
    </message>
    <message>
        <source>Kept for this shop. Every change holds at once and can be undone.</source>
        <translation>Für diese Werkstatt aufgehoben. Jede Änderung gilt sofort und lässt sich zurücknehmen.</translation>
    </message>
    <message>
        <source>All figures here are invented: put your own in their place. Every change holds at once and can be undone.</source>
        <translation>Alle Zahlen hier sind erfunden: Setzen Sie Ihre eigenen ein. Jede Änderung gilt sofort und lässt sich zurücknehmen.</translation>
    </message>
    <message>
        <source>{fault} The example stands in its place; once you change it, the old file is set aside, not lost.</source>
        <translation>{fault} Das Beispiel steht an ihrer Stelle; sobald Sie es ändern, wird die alte Datei beiseitegelegt, nicht verloren.</translation>
    </message>
    <message>
        <source>The design in hand cannot be priced yet.</source>
        <translation>Für diesen Entwurf lässt sich noch kein Preis nennen.</translation>
    </message>
    <message>
        <source>Build a design; what it costs stands here.</source>
        <translation>Bauen Sie einen Entwurf; was er kostet, steht dann hier.</translation>
    </message>
    <message>
        <source>{name}: net {net}</source>
        <translation>{name}: netto {net}</translation>
    </message>
    <message>
        <source>, {tax}: {amount}</source>
        <translation>, {tax}: {amount}</translation>
    </message>
    <message>
        <source>Currency</source>
        <translation>Währung</translation>
    </message>
    <message>
        <source>Three letters, like EUR.</source>
        <translation>Drei Buchstaben, wie EUR.</translation>
    </message>
    <message>
        <source>Least net price of a job</source>
        <translation>Mindestpreis eines Auftrags, netto</translation>
    </message>
    <message>
        <source>Name of the tax</source>
        <translation>Name der Steuer</translation>
    </message>
    <message>
        <source>Tax, %</source>
        <translation>Steuer, %</translation>
    </message>
    <message>
        <source>Round each line to</source>
        <translation>Jede Zeile runden auf</translation>
    </message>
    <message>
        <source>Round the total to</source>
        <translation>Die Summe runden auf</translation>
    </message>
    <message>
        <source>One line for all that is private</source>
        <translation>Eine Zeile für alles Interne</translation>
    </message>
    <message>
        <source>The client sees the sum of the private lines under this title.</source>
        <translation>Der Kunde sieht die Summe der internen Zeilen unter diesem Titel.</translation>
    </message>
    <message>
        <source>Price book</source>
        <translation>Preisliste</translation>
    </message>
    <message>
        <source>The total</source>
        <translation>Die Summe</translation>
    </message>
    <message>
        <source>Price book: {field}</source>
        <translation>Preisliste: {field}</translation>
    </message>
    <message>
        <source>Price of {title}</source>
        <translation>Preis von {title}</translation>
    </message>
    <message>
        <source>Take {title} out of the price book</source>
        <translation>{title} aus der Preisliste nehmen</translation>
    </message>
    <message>
        <source>Move {title} in the price book</source>
        <translation>{title} in der Preisliste verschieben</translation>
    </message>
    <message>
        <source>New charge</source>
        <translation>Neuer Posten</translation>
    </message>
    <message>
        <source>Add a charge to the price book</source>
        <translation>Der Preisliste einen Posten hinzufügen</translation>
    </message>
    <message>
        <source>A price book</source>
        <translation>Eine Preisliste</translation>
    </message>
    <message>
        <source>Price books (*.toml)</source>
        <translation>Preislisten (*.toml)</translation>
    </message>
</context>
<context>
    <name>Prices</name>
    <message>
        <source>Mat</source>
        <translation>Passepartout</translation>
    </message>
    <message>
        <source>Wrapped fillet</source>
        <translation>Bezogenes Filet</translation>
    </message>
    <message>
        <source>Wood fillet</source>
        <translation>Holzfilet</translation>
    </message>
    <message>
        <source>Liner</source>
        <translation>Einlageleiste</translation>
    </message>
    <message>
        <source>Moulding</source>
        <translation>Leiste</translation>
    </message>
    <message>
        <source>Glazing</source>
        <translation>Verglasung</translation>
    </message>
    <message>
        <source>Mount board</source>
        <translation>Trägerkarton</translation>
    </message>
    <message>
        <source>Backing</source>
        <translation>Rückwand</translation>
    </message>
    <message>
        <source>Each opening cut</source>
        <translation>Jeder Ausschnitt</translation>
    </message>
    <message>
        <source>The job, once</source>
        <translation>Der Auftrag, einmal</translation>
    </message>
    <message>
        <source>United inch</source>
        <translation>Zoll Breite plus Höhe</translation>
    </message>
    <message>
        <source>Length</source>
        <translation>Länge</translation>
    </message>
    <message>
        <source>Area</source>
        <translation>Fläche</translation>
    </message>
    <message>
        <source>Each</source>
        <translation>Stück</translation>
    </message>
    <message>
        <source>Time</source>
        <translation>Zeit</translation>
    </message>
    <message>
        <source>Catalogue price</source>
        <translation>Katalogpreis</translation>
    </message>
    <message>
        <source>{currency} for a united inch (width and height)</source>
        <translation>{currency} je Zoll (Breite plus Höhe)</translation>
    </message>
    <message>
        <source>{currency} for 1 {unit}, long points</source>
        <translation>{currency} für 1 {unit}, Gehrungsspitzen außen</translation>
    </message>
    <message>
        <source>{currency} for 1 {unit}</source>
        <translation>{currency} für 1 {unit}</translation>
    </message>
    <message>
        <source>{currency} for each</source>
        <translation>{currency} je Stück</translation>
    </message>
    <message>
        <source>{currency} for an hour</source>
        <translation>{currency} je Stunde</translation>
    </message>
    <message>
        <source>Times the sample&apos;s own price</source>
        <translation>Mal den eigenen Preis des Musters</translation>
    </message>
</context>
<context>
    <name>ProbeChip</name>
    <message>
        <source>No colour to look near</source>
        <translation>Keine Farbe zum Nahesuchen</translation>
    </message>
    <message>
        <source>Near {colour}</source>
        <translation>Nahe {colour}</translation>
    </message>
    <message>
        <source>{near}, let it go</source>
        <translation>{near}, loslassen</translation>
    </message>
    <message>
        <source>Let the colour go</source>
        <translation>Farbe loslassen</translation>
    </message>
</context>
<context>
    <name>ProblemReport</name>
    <message>
        <source>Report a problem</source>
        <translation>Problem melden</translation>
    </message>
    <message>
        <source>Looking …</source>
        <translation>Wird angesehen …</translation>
    </message>
    <message>
        <source>Written as {name}. Please look through it before you send it.</source>
        <translation>Geschrieben als {name}. Bitte sehen Sie es durch, bevor Sie es senden.</translation>
    </message>
</context>
<context>
    <name>QuestionBoard</name>
    <message>
        <source>Which for this picture?</source>
        <translation>Welches für dieses Bild?</translation>
    </message>
    <message>
        <source>Neither</source>
        <translation>Keines</translation>
    </message>
    <message>
        <source>Prefer neither of the two</source>
        <translation>Keines von beiden vorziehen</translation>
    </message>
    <message>
        <source>Prefer neither; the pair is not asked about again  (N)</source>
        <translation>Keines vorziehen; nach dem Paar wird nicht mehr gefragt  (N)</translation>
    </message>
    <message>
        <source>Back to one picture</source>
        <translation>Zurück zu einem Bild</translation>
    </message>
    <message>
        <source>Judge by the look alone. {count} answered on this picture. Answers are kept for this shop; nothing is learned from them until you ask for it.</source>
        <translation>Urteilen Sie nur nach dem Aussehen. {count} zu diesem Bild beantwortet. Antworten bleiben in dieser Werkstatt; gelernt wird daraus nichts, bevor Sie es verlangen.</translation>
    </message>
    <message>
        <source>Prefer {name}</source>
        <translation>{name} vorziehen</translation>
    </message>
    <message>
        <source>{number}   This one</source>
        <translation>{number}   Dieses</translation>
    </message>
</context>
<context>
    <name>RackList</name>
    <message>
        <source>Samples of the rack</source>
        <translation>Muster des Sortiments</translation>
    </message>
    <message>
        <source>In order of</source>
        <translation>Geordnet nach</translation>
    </message>
    <message>
        <source>Hue</source>
        <translation>Farbton</translation>
    </message>
    <message>
        <source>Lightness</source>
        <translation>Helligkeit</translation>
    </message>
    <message>
        <source>Name</source>
        <translation>Name</translation>
    </message>
    <message>
        <source>Kind</source>
        <translation>Art</translation>
    </message>
    <message>
        <source>No sample passes. Show all families, all kinds and every lightness again.</source>
        <translation>Kein Muster kommt durch. Zeigen Sie wieder alle Familien, alle Arten und jede Helligkeit.</translation>
    </message>
</context>
<context>
    <name>RackMap</name>
    <message>
        <source>, out of stock</source>
        <translation>, nicht vorrätig</translation>
    </message>
    <message>
        <source>Map of the rack</source>
        <translation>Karte des Sortiments</translation>
    </message>
    <message>
        <source>{colour}: nothing in stock at all.</source>
        <translation>{colour}: gar nichts vorrätig.</translation>
    </message>
    <message>
        <source>{colour}: a gap. The nearest in stock is {nearest}.</source>
        <translation>{colour}: eine Lücke. Am nächsten vorrätig ist {nearest}.</translation>
    </message>
    <message>
        <source>{colour}: the nearest in stock is {nearest}.</source>
        <translation>{colour}: Am nächsten vorrätig ist {nearest}.</translation>
    </message>
    <message>
        <source>{shown} of {there} samples.</source>
        <translation>{shown} von {there} Mustern.</translation>
    </message>
    <message>
        <source>{gaps} colours that this picture asks for have nothing near them.</source>
        <translation>{gaps} Farben, nach denen dieses Bild fragt, haben nichts in ihrer Nähe.</translation>
    </message>
    <message>
        <source>Looking near {name}: {count} samples.</source>
        <translation>In der Nähe von {name}: {count} Muster.</translation>
    </message>
</context>
<context>
    <name>RackRows</name>
    <message>
        <source>out of stock</source>
        <translation>nicht vorrätig</translation>
    </message>
    <message>
        <source>favourite</source>
        <translation>Liebling</translation>
    </message>
</context>
<context>
    <name>RackShelf</name>
    <message>
        <source>Near</source>
        <translation>Nähe</translation>
    </message>
    <message>
        <source>Gaps</source>
        <translation>Lücken</translation>
    </message>
    <message>
        <source>Import</source>
        <translation>Einlesen</translation>
    </message>
    <message>
        <source>Swatch</source>
        <translation>Messen</translation>
    </message>
    <message>
        <source>Hidden</source>
        <translation>Verborgen</translation>
    </message>
    <message>
        <source>Shelf</source>
        <translation>Regal</translation>
    </message>
    <message>
        <source>Rack</source>
        <translation>Sortiment</translation>
    </message>
</context>
<context>
    <name>RackStage</name>
    <message>
        <source>Family</source>
        <translation>Familie</translation>
    </message>
    <message>
        <source>All</source>
        <translation>Alle</translation>
    </message>
    <message>
        <source>In stock</source>
        <translation>Vorrätig</translation>
    </message>
    <message>
        <source>Show only what is in stock</source>
        <translation>Nur Vorrätiges zeigen</translation>
    </message>
    <message>
        <source>Favourites</source>
        <translation>Lieblinge</translation>
    </message>
    <message>
        <source>Show only the shop&apos;s favourites</source>
        <translation>Nur die Lieblinge der Werkstatt zeigen</translation>
    </message>
    <message>
        <source>Narrow down</source>
        <translation>Eingrenzen</translation>
    </message>
    <message>
        <source>Show families and kinds</source>
        <translation>Familien und Arten zeigen</translation>
    </message>
    <message>
        <source>Show as</source>
        <translation>Zeigen als</translation>
    </message>
    <message>
        <source>Map</source>
        <translation>Karte</translation>
    </message>
    <message>
        <source>Levels</source>
        <translation>Stufen</translation>
    </message>
    <message>
        <source>List</source>
        <translation>Liste</translation>
    </message>
    <message>
        <source>Show only: {kind}</source>
        <translation>Nur zeigen: {kind}</translation>
    </message>
    <message>
        <source>{shown:,} of {there:,} samples</source>
        <translation>{shown:,} von {there:,} Mustern</translation>
    </message>
    <message>
        <source>a hollow tile is out of stock</source>
        <translation>ein hohles Feld ist nicht vorrätig</translation>
    </message>
    <message>
        <source>rings are the picture&apos;s colours, a crossed ring is a gap</source>
        <translation>Ringe sind die Farben des Bildes, ein durchkreuzter ist eine Lücke</translation>
    </message>
</context>
<context>
    <name>Rail</name>
    <message>
        <source>Side by side</source>
        <translation>Nebeneinander</translation>
    </message>
    <message>
        <source>Keep the design in hand, or what is laid round</source>
        <translation>Den Entwurf oder das Umgelegte merken</translation>
    </message>
</context>
<context>
    <name>ReadShelf</name>
    <message>
        <source>What is in it</source>
        <translation>Was darin ist</translation>
    </message>
    <message>
        <source>Bring a picture first.</source>
        <translation>Bringen Sie erst ein Bild.</translation>
    </message>
    <message>
        <source>Draw where the eye should rest. Until then that place is a guess, and the shelf judges by it.</source>
        <translation>Zeichnen Sie, wo das Auge ruhen soll. Bis dahin ist die Stelle vermutet, und das Regal urteilt danach.</translation>
    </message>
    <message>
        <source>Point at a colour to see where it lives in the picture.</source>
        <translation>Zeigen Sie auf eine Farbe, um zu sehen, wo sie im Bild lebt.</translation>
    </message>
    <message>
        <source>Rim</source>
        <translation>Rand</translation>
    </message>
    <message>
        <source>Whole picture</source>
        <translation>Ganzes Bild</translation>
    </message>
    <message>
        <source>Focus, a guess</source>
        <translation>Blickpunkt, vermutet</translation>
    </message>
</context>
<context>
    <name>ReadStep</name>
    <message>
        <source>{count} drawn</source>
        <translation>{count} gezeichnet</translation>
    </message>
    <message>
        <source>where the eye should rest is a guess</source>
        <translation>wo das Auge ruhen soll, ist vermutet</translation>
    </message>
</context>
<context>
    <name>RecentJob</name>
    <message>
        <source>Open {job}</source>
        <translation>{job} öffnen</translation>
    </message>
</context>
<context>
    <name>RecentJobs</name>
    <message>
        <source>Worked on last</source>
        <translation>Zuletzt bearbeitet</translation>
    </message>
</context>
<context>
    <name>RegionCard</name>
    <message>
        <source>Name of the region</source>
        <translation>Name des Bereichs</translation>
    </message>
    <message>
        <source>Delete the region</source>
        <translation>Bereich löschen</translation>
    </message>
    <message>
        <source>Eye rests here</source>
        <translation>Hier ruht das Auge</translation>
    </message>
    <message>
        <source>Supports</source>
        <translation>Stützt</translation>
    </message>
    <message>
        <source>Background</source>
        <translation>Hintergrund</translation>
    </message>
    <message>
        <source>the eye rests here</source>
        <translation>hier ruht das Auge</translation>
    </message>
    <message>
        <source>supports</source>
        <translation>stützt</translation>
    </message>
    <message>
        <source>background</source>
        <translation>Hintergrund</translation>
    </message>
    <message>
        <source>what a border touches</source>
        <translation>was ein Rand berührt</translation>
    </message>
    <message>
        <source>Accents: {names}.</source>
        <translation>Akzente: {names}.</translation>
    </message>
</context>
<context>
    <name>RegionLayer</name>
    <message>
        <source>a guess</source>
        <translation>vermutet</translation>
    </message>
</context>
<context>
    <name>Regions</name>
    <message>
        <source>region {number}</source>
        <translation>Bereich {number}</translation>
    </message>
</context>
<context>
    <name>SampleFacts</name>
    <message>
        <source>Code</source>
        <translation>Code</translation>
    </message>
    <message>
        <source>Name</source>
        <translation>Name</translation>
    </message>
    <message>
        <source>Kind</source>
        <translation>Art</translation>
    </message>
    <message>
        <source>Surface</source>
        <translation>Oberfläche</translation>
    </message>
    <message>
        <source>Material</source>
        <translation>Material</translation>
    </message>
    <message>
        <source>Finish</source>
        <translation>Finish</translation>
    </message>
    <message>
        <source>Width</source>
        <translation>Breite</translation>
    </message>
    <message>
        <source>Thickness or height</source>
        <translation>Dicke oder Höhe</translation>
    </message>
    <message>
        <source>Bevel</source>
        <translation>Schräge</translation>
    </message>
    <message>
        <source>Rabbet width</source>
        <translation>Falzbreite</translation>
    </message>
    <message>
        <source>Rabbet depth</source>
        <translation>Falztiefe</translation>
    </message>
    <message>
        <source>Stick length</source>
        <translation>Stangenlänge</translation>
    </message>
    <message>
        <source>Sheet width</source>
        <translation>Bogenbreite</translation>
    </message>
    <message>
        <source>Sheet height</source>
        <translation>Bogenhöhe</translation>
    </message>
    <message>
        <source>Density, kg/m³</source>
        <translation>Dichte, kg/m³</translation>
    </message>
    <message>
        <source>Corner</source>
        <translation>Ecke</translation>
    </message>
    <message>
        <source>Picture of the surface</source>
        <translation>Bild der Oberfläche</translation>
    </message>
    <message>
        <source>Its mm per pixel</source>
        <translation>Dessen mm je Pixel</translation>
    </message>
    <message>
        <source>Price</source>
        <translation>Preis</translation>
    </message>
    <message>
        <source>Price for</source>
        <translation>Preis für</translation>
    </message>
    <message>
        <source>In stock</source>
        <translation>Vorrätig</translation>
    </message>
    <message>
        <source>Conservation</source>
        <translation>Konservierung</translation>
    </message>
    <message>
        <source>Family</source>
        <translation>Familie</translation>
    </message>
    <message>
        <source>Tags</source>
        <translation>Schlagwörter</translation>
    </message>
    <message>
        <source>Colour L*</source>
        <translation>Farbe L*</translation>
    </message>
    <message>
        <source>Colour a*</source>
        <translation>Farbe a*</translation>
    </message>
    <message>
        <source>Colour b*</source>
        <translation>Farbe b*</translation>
    </message>
</context>
<context>
    <name>SampleList</name>
    <message>
        <source>up {places}</source>
        <translation>{places} hinauf</translation>
    </message>
    <message>
        <source>down {places}</source>
        <translation>{places} hinunter</translation>
    </message>
    <message>
        <source>Complements</source>
        <translation>Ergänzt</translation>
    </message>
    <message>
        <source>Blends</source>
        <translation>Fügt sich ein</translation>
    </message>
    <message>
        <source>Clashes</source>
        <translation>Beißt sich</translation>
    </message>
    <message>
        <source>open</source>
        <translation>offen</translation>
    </message>
    <message>
        <source>closed</source>
        <translation>geschlossen</translation>
    </message>
    <message>
        <source>By taste {moved}.</source>
        <translation>Nach Geschmack {moved}.</translation>
    </message>
    <message>
        <source>{count:,} more that fit less well: search, or show one kind.</source>
        <translation>{count:,} weitere, die weniger passen: Suchen Sie, oder zeigen Sie eine Art.</translation>
    </message>
</context>
<context>
    <name>Saving</name>
    <message>
        <source>The job is in the file {name} as well.</source>
        <translation>Der Auftrag liegt auch in der Datei {name}.</translation>
    </message>
    <message>
        <source>Another job has this number, so this one is {number} now.</source>
        <translation>Ein anderer Auftrag hat diese Nummer; dieser ist jetzt {number}.</translation>
    </message>
    <message>
        <source>Changed at the other counter</source>
        <translation>Am anderen Platz geändert</translation>
    </message>
    <message>
        <source>Changed at the other counter, and brought in here.</source>
        <translation>Am anderen Platz geändert und hier übernommen.</translation>
    </message>
    <message>
        <source>Changed at the other counter, and brought in here: {what}.</source>
        <translation>Am anderen Platz geändert und hier übernommen: {what}.</translation>
    </message>
    <message>
        <source>cannot be saved</source>
        <translation>lässt sich nicht sichern</translation>
    </message>
    <message>
        <source>saving</source>
        <translation>wird gesichert</translation>
    </message>
    <message>
        <source>kept on this computer</source>
        <translation>auf diesem Rechner aufgehoben</translation>
    </message>
    <message>
        <source>kept on this computer until you choose</source>
        <translation>auf diesem Rechner aufgehoben, bis Sie wählen</translation>
    </message>
    <message>
        <source>erased at another counter</source>
        <translation>am anderen Platz gelöscht</translation>
    </message>
    <message>
        <source>This job was erased at another counter; what is done here is not kept.</source>
        <translation>Dieser Auftrag wurde am anderen Platz gelöscht; was hier geschieht, wird nicht aufgehoben.</translation>
    </message>
    <message>
        <source>saved {at}</source>
        <translation>gesichert {at}</translation>
    </message>
</context>
<context>
    <name>ScaleLayer</name>
    <message>
        <source>The size of the art is not known yet</source>
        <translation>Die Größe des Werks ist noch unbekannt</translation>
    </message>
</context>
<context>
    <name>ScreenBar</name>
    <message>
        <source>A screen shows colour only approximately: confirm with the sample itself under good light. Sliding here spares delicate art.</source>
        <translation>Ein Bildschirm zeigt Farben nur ungefähr: Bestätigen Sie am Muster selbst unter gutem Licht. Hier zu schieben schont empfindliche Werke.</translation>
    </message>
    <message>
        <source>Check this screen</source>
        <translation>Bildschirm prüfen</translation>
    </message>
    <message>
        <source>Understood</source>
        <translation>Verstanden</translation>
    </message>
</context>
<context>
    <name>ScreenCheck</name>
    <message>
        <source>Every step should be seen apart from its neighbours, and none should look tinted. If the ends run together, set the screen&apos;s brightness first.</source>
        <translation>Jede Stufe sollte sich von ihren Nachbarn abheben, und keine sollte farbig wirken. Laufen die Enden zusammen, stellen Sie zuerst die Helligkeit des Bildschirms ein.</translation>
    </message>
    <message>
        <source>From two steps away, or with half-closed eyes, the lines and the patch among them should be one grey. If the patch stands out, this screen shows middle tones too light or too dark.</source>
        <translation>Aus zwei Schritten Abstand oder mit halb geschlossenen Augen sollten die Linien und das Feld dazwischen ein Grau sein. Hebt sich das Feld ab, zeigt dieser Bildschirm mittlere Töne zu hell oder zu dunkel.</translation>
    </message>
    <message>
        <source>The system tells nothing of this screen&apos;s colour profile. Trust its colours less than those of a screen that was measured.</source>
        <translation>Das System sagt nichts über das Farbprofil dieses Bildschirms. Trauen Sie seinen Farben weniger als denen eines gemessenen Bildschirms.</translation>
    </message>
    <message>
        <source>The screen&apos;s profile is {name}. Its colours are those in which the picture is shown.</source>
        <translation>Das Profil des Bildschirms ist {name}. In seinen Farben wird das Bild gezeigt.</translation>
    </message>
    <message>
        <source>The screen&apos;s profile is {name}. The picture is shown in sRGB: unless the system converts it, colours look stronger or duller here than they are.</source>
        <translation>Das Profil des Bildschirms ist {name}. Das Bild wird in sRGB gezeigt: Wenn das System es nicht umrechnet, wirken Farben hier kräftiger oder matter, als sie sind.</translation>
    </message>
    <message>
        <source>without a name</source>
        <translation>ohne Namen</translation>
    </message>
</context>
<context>
    <name>SectionView</name>
    <message>
        <source>Overlap</source>
        <translation>Überdeckung</translation>
    </message>
    <message>
        <source>Width of {part}</source>
        <translation>Breite: {part}</translation>
    </message>
    <message>
        <source>Section through the frame: {said}</source>
        <translation>Schnitt durch den Rahmen: {said}</translation>
    </message>
</context>
<context>
    <name>SettingsShelf</name>
    <message>
        <source>Settings</source>
        <translation>Einstellungen</translation>
    </message>
    <message>
        <source>They are kept for this shop&apos;s computer.</source>
        <translation>Sie gelten für den Rechner dieser Werkstatt.</translation>
    </message>
    <message>
        <source>Looking</source>
        <translation>Ansicht</translation>
    </message>
    <message>
        <source>Lightness of the surround</source>
        <translation>Helligkeit des Umfelds</translation>
    </message>
    <message>
        <source>Surround</source>
        <translation>Umfeld</translation>
    </message>
    <message>
        <source>How light the grey round the picture is, L* 20 to 95. Colours are judged against it; 60 is the usual one.</source>
        <translation>Wie hell das Grau um das Bild ist, L* 20 bis 95. Farben werden davor beurteilt; üblich ist 60.</translation>
    </message>
    <message>
        <source>Theme</source>
        <translation>Farbschema</translation>
    </message>
    <message>
        <source>As the desktop</source>
        <translation>Wie der Schreibtisch</translation>
    </message>
    <message>
        <source>Light</source>
        <translation>Hell</translation>
    </message>
    <message>
        <source>Dark</source>
        <translation>Dunkel</translation>
    </message>
    <message>
        <source>Language / Sprache</source>
        <translation>Language / Sprache</translation>
    </message>
    <message>
        <source>As the computer</source>
        <translation>Wie der Rechner</translation>
    </message>
    <message>
        <source>Takes hold when the window opens next.</source>
        <translation>Gilt, wenn das Fenster das nächste Mal öffnet.</translation>
    </message>
    <message>
        <source>Size of the interface</source>
        <translation>Größe der Oberfläche</translation>
    </message>
    <message>
        <source>Motion</source>
        <translation>Bewegung</translation>
    </message>
    <message>
        <source>Gentle cross-fades</source>
        <translation>Sanfte Übergänge</translation>
    </message>
    <message>
        <source>None</source>
        <translation>Keine</translation>
    </message>
    <message>
        <source>Measures</source>
        <translation>Maße</translation>
    </message>
    <message>
        <source>Unit</source>
        <translation>Einheit</translation>
    </message>
    <message>
        <source>Inches</source>
        <translation>Zoll</translation>
    </message>
    <message>
        <source>Millimetres</source>
        <translation>Millimeter</translation>
    </message>
    <message>
        <source>Centimetres</source>
        <translation>Zentimeter</translation>
    </message>
    <message>
        <source>Fractions of an inch down to</source>
        <translation>Bruchteile eines Zolls bis</translation>
    </message>
    <message>
        <source>Only how lengths are shown: inside they are exact.</source>
        <translation>Nur wie Längen gezeigt werden: Innen sind sie exakt.</translation>
    </message>
    <message>
        <source>Mat laid round the picture</source>
        <translation>Passepartout um das Bild</translation>
    </message>
    <message>
        <source>How wide a mat is shown while you choose. The design sets the true border.</source>
        <translation>Wie breit ein Passepartout beim Auswählen gezeigt wird. Den wahren Rand bestimmt der Entwurf.</translation>
    </message>
    <message>
        <source>Two measurements may differ by</source>
        <translation>Zwei Messungen dürfen abweichen um</translation>
    </message>
    <message>
        <source>More than this stops the ticket and says which side.</source>
        <translation>Mehr hält den Werkstattzettel an und sagt, welche Seite.</translation>
    </message>
    <message>
        <source>Taste</source>
        <translation>Geschmack</translation>
    </message>
    <message>
        <source>The shortlist is ordered by</source>
        <translation>Die Auswahl wird geordnet nach</translation>
    </message>
    <message>
        <source>House rule</source>
        <translation>Hausregel</translation>
    </message>
    <message>
        <source>This shop&apos;s taste</source>
        <translation>Geschmack dieser Werkstatt</translation>
    </message>
    <message>
        <source>What the shop preferred, side by side, in questions and by keeping and sending away, can move samples within their verdict. What it rests on stands on the taste card in Choose (T).</source>
        <translation>Was die Werkstatt nebeneinander, in Fragen und durch Merken und Weglegen vorgezogen hat, kann Muster innerhalb ihres Urteils verschieben. Worauf das beruht, steht in der Auswahl auf der Geschmackskarte (T).</translation>
    </message>
    <message>
        <source>Beside the client</source>
        <translation>Neben dem Kunden</translation>
    </message>
    <message>
        <source>Numbers on the picture</source>
        <translation>Zahlen auf dem Bild</translation>
    </message>
    <message>
        <source>Shown</source>
        <translation>Sichtbar</translation>
    </message>
    <message>
        <source>Hidden</source>
        <translation>Verborgen</translation>
    </message>
    <message>
        <source>The tag of a strip says its word with or without ΔE₀₀.</source>
        <translation>Das Schild eines Streifens sagt sein Wort mit oder ohne ΔE₀₀.</translation>
    </message>
    <message>
        <source>This screen</source>
        <translation>Dieser Bildschirm</translation>
    </message>
    <message>
        <source>A screen shows colour only approximately. Confirm every choice with the sample itself under good light. Sliding samples here first spares delicate art.</source>
        <translation>Ein Bildschirm zeigt Farben nur ungefähr. Bestätigen Sie jede Wahl am Muster selbst unter gutem Licht. Wer Muster zuerst hier schiebt, schont empfindliche Bilder.</translation>
    </message>
    <message>
        <source>A simple check</source>
        <translation>Eine einfache Prüfung</translation>
    </message>
    <message>
        <source>The shop&apos;s jobs</source>
        <translation>Die Aufträge der Werkstatt</translation>
    </message>
    <message>
        <source>Where they are kept</source>
        <translation>Wo sie liegen</translation>
    </message>
    <message>
        <source>A file of this computer, or the address of a PostgreSQL server that several counters share, such as postgresql+psycopg://user@host/shop; they share a folder of photographs too. Leave the password to the database&apos;s own password file.</source>
        <translation>Eine Datei dieses Rechners oder die Adresse eines PostgreSQL-Servers, den mehrere Plätze teilen, wie postgresql+psycopg://user@host/shop; auch einen Ordner für Fotos teilen sie. Das Kennwort gehört in die Kennwortdatei der Datenbank.</translation>
    </message>
    <message>
        <source>When something goes wrong</source>
        <translation>Wenn etwas schiefgeht</translation>
    </message>
    <message>
        <source>Writes one file with versions, the health of this installation and the end of the log; no job, picture or name is in it. Nothing is sent by the program.</source>
        <translation>Schreibt eine Datei mit Versionen, dem Zustand dieser Installation und dem Ende des Protokolls; kein Auftrag, Bild oder Name steht darin. Das Programm sendet nichts.</translation>
    </message>
</context>
<context>
    <name>Shell</name>
    <message>
        <source>Framing Palette</source>
        <translation>Framing Palette</translation>
    </message>
    <message>
        <source>The job book</source>
        <translation>Das Auftragsbuch</translation>
    </message>
    <message>
        <source>The rack</source>
        <translation>Das Sortiment</translation>
    </message>
    <message>
        <source>The client&apos;s view</source>
        <translation>Die Kundenansicht</translation>
    </message>
    <message>
        <source>Keys</source>
        <translation>Tasten</translation>
    </message>
    <message>
        <source>Settings</source>
        <translation>Einstellungen</translation>
    </message>
    <message>
        <source>Opening the picture</source>
        <translation>Das Bild wird geöffnet</translation>
    </message>
    <message>
        <source>Loading the rack</source>
        <translation>Das Sortiment wird geladen</translation>
    </message>
    <message>
        <source>Reading the picture</source>
        <translation>Das Bild wird gelesen</translation>
    </message>
    <message>
        <source>Judging the rack</source>
        <translation>Das Sortiment wird beurteilt</translation>
    </message>
</context>
<context>
    <name>SizeFields</name>
    <message>
        <source>Width of the art</source>
        <translation>Breite des Werks</translation>
    </message>
    <message>
        <source>Height of the art</source>
        <translation>Höhe des Werks</translation>
    </message>
    <message>
        <source>Width</source>
        <translation>Breite</translation>
    </message>
    <message>
        <source>Height</source>
        <translation>Höhe</translation>
    </message>
</context>
<context>
    <name>SizeRow</name>
    <message>
        <source>How it came about: {size}</source>
        <translation>Wie es zustande kam: {size}</translation>
    </message>
    <message>
        <source>how</source>
        <translation>wie</translation>
    </message>
</context>
<context>
    <name>SizesShelf</name>
    <message>
        <source>Every size</source>
        <translation>Jedes Maß</translation>
    </message>
    <message>
        <source>Build a design first; its sizes and sums stand here.</source>
        <translation>Bauen Sie erst einen Entwurf; seine Maße und Rechnungen stehen dann hier.</translation>
    </message>
    <message>
        <source>the design</source>
        <translation>der Entwurf</translation>
    </message>
    <message>
        <source>Of {design}. &quot;How&quot; shows the sum behind a figure.</source>
        <translation>Für „{design}“: „Wie“ zeigt die Rechnung hinter einer Zahl.</translation>
    </message>
    <message>
        <source>Of {design}. By the size that was told, not measured yet.</source>
        <translation>Für „{design}“, nach der angegebenen Größe, noch nicht gemessen.</translation>
    </message>
</context>
<context>
    <name>Slot</name>
    <message>
        <source>Place %1, empty</source>
        <translation>Platz %1, leer</translation>
    </message>
    <message>
        <source>K keeps a sample here</source>
        <translation>K merkt hier ein Muster</translation>
    </message>
</context>
<context>
    <name>Step</name>
    <message>
        <source>Intake</source>
        <translation>Annahme</translation>
    </message>
    <message>
        <source>Read</source>
        <translation>Lesen</translation>
    </message>
    <message>
        <source>Choose</source>
        <translation>Auswahl</translation>
    </message>
    <message>
        <source>Build</source>
        <translation>Aufbau</translation>
    </message>
    <message>
        <source>Measure</source>
        <translation>Maße</translation>
    </message>
    <message>
        <source>Agree</source>
        <translation>Einigung</translation>
    </message>
</context>
<context>
    <name>Stop</name>
    <message>
        <source>done</source>
        <translation>fertig</translation>
    </message>
    <message>
        <source>open</source>
        <translation>offen</translation>
    </message>
    <message>
        <source>needs attention</source>
        <translation>braucht Aufmerksamkeit</translation>
    </message>
</context>
<context>
    <name>StripTools</name>
    <message>
        <source>Turn the strip</source>
        <translation>Streifen drehen</translation>
    </message>
    <message>
        <source>Bend it into a corner, or straighten it</source>
        <translation>Zur Ecke biegen oder strecken</translation>
    </message>
    <message>
        <source>Lay it round the picture</source>
        <translation>Um das Bild legen</translation>
    </message>
    <message>
        <source>Keep it on the rail</source>
        <translation>Auf dem Bord merken</translation>
    </message>
    <message>
        <source>Send the sample away</source>
        <translation>Das Muster weglegen</translation>
    </message>
    <message>
        <source>Take the strip off the picture</source>
        <translation>Den Streifen vom Bild nehmen</translation>
    </message>
</context>
<context>
    <name>SwatchFolder</name>
    <message>
        <source>Choose a folder</source>
        <translation>Ordner wählen</translation>
    </message>
    <message>
        <source>Stop</source>
        <translation>Anhalten</translation>
    </message>
    <message>
        <source>Go on</source>
        <translation>Weiter</translation>
    </message>
    <message>
        <source>Kind</source>
        <translation>Art</translation>
    </message>
    <message>
        <source>Put them on the rack</source>
        <translation>Ins Sortiment nehmen</translation>
    </message>
    <message>
        <source>A folder of swatch photographs</source>
        <translation>Ein Ordner mit Fotos von Mustern</translation>
    </message>
    <message>
        <source>Measuring</source>
        <translation>Es wird gemessen</translation>
    </message>
    <message>
        <source>Stopped. What is measured is kept; go on when you like.</source>
        <translation>Angehalten. Was gemessen ist, bleibt; machen Sie weiter, wann Sie mögen.</translation>
    </message>
    <message>
        <source>Put {count} swatches of {name} on the rack</source>
        <translation>{count} Muster aus {name} ins Sortiment nehmen</translation>
    </message>
    <message>
        <source>{count} swatches are on the rack. Undo takes them all back.</source>
        <translation>{count} Muster sind im Sortiment. Rückgängig nimmt alle wieder heraus.</translation>
    </message>
    <message>
        <source>{good} measured, {bad} could not be.</source>
        <translation>{good} gemessen, {bad} ließen sich nicht messen.</translation>
    </message>
    <message>
        <source>A folder with one photograph a swatch, each called by its code. They are measured side by side, and what is measured once is not measured again.</source>
        <translation>Ein Ordner mit einem Foto je Muster, jedes nach seinem Code benannt. Sie werden nebeneinander gemessen; was einmal gemessen ist, wird nicht noch einmal gemessen.</translation>
    </message>
    <message>
        <source>Millimetres per pixel of all of them (may be left out)</source>
        <translation>Millimeter je Pixel für alle (darf fehlen)</translation>
    </message>
    <message>
        <source>{done} of {there} measured.</source>
        <translation>{done} von {there} gemessen.</translation>
    </message>
</context>
<context>
    <name>SwatchPage</name>
    <message>
        <source>What is photographed</source>
        <translation>Was fotografiert ist</translation>
    </message>
    <message>
        <source>One swatch</source>
        <translation>Ein Muster</translation>
    </message>
    <message>
        <source>Contact sheet</source>
        <translation>Musterbogen</translation>
    </message>
    <message>
        <source>Folder</source>
        <translation>Ordner</translation>
    </message>
</context>
<context>
    <name>SwatchPhoto</name>
    <message>
        <source>Drag a corner or a whole outline. N and P choose the next and the last one, arrow keys move it, Delete takes it away. A broken line is the colour chart.</source>
        <translation>Ziehen Sie eine Ecke oder einen ganzen Umriss. N und P wählen den nächsten und den vorigen, Pfeiltasten bewegen ihn, Entf nimmt ihn weg. Eine gestrichelte Linie ist die Farbkarte.</translation>
    </message>
    <message>
        <source>One more outline</source>
        <translation>Noch ein Umriss</translation>
    </message>
    <message>
        <source>Take the chosen one away</source>
        <translation>Den gewählten wegnehmen</translation>
    </message>
    <message>
        <source>Back to the map</source>
        <translation>Zurück zur Karte</translation>
    </message>
</context>
<context>
    <name>SwatchPlate</name>
    <message>
        <source>Photograph of swatches</source>
        <translation>Foto der Muster</translation>
    </message>
    <message>
        <source>Swatch {number} of {count} is chosen.</source>
        <translation>Muster {number} von {count} ist gewählt.</translation>
    </message>
</context>
<context>
    <name>SwatchSheet</name>
    <message>
        <source>Width of what the photograph shows</source>
        <translation>Breite dessen, was das Foto zeigt</translation>
    </message>
    <message>
        <source>Choose a photograph</source>
        <translation>Foto wählen</translation>
    </message>
    <message>
        <source>Kind</source>
        <translation>Art</translation>
    </message>
    <message>
        <source>Put it on the rack</source>
        <translation>Ins Sortiment nehmen</translation>
    </message>
    <message>
        <source>A photograph of the swatch alone</source>
        <translation>Ein Foto des Musters allein</translation>
    </message>
    <message>
        <source>Opening the photograph</source>
        <translation>Das Foto wird geöffnet</translation>
    </message>
    <message>
        <source>Measuring</source>
        <translation>Es wird gemessen</translation>
    </message>
    <message>
        <source>Measure {code} anew</source>
        <translation>{code} neu messen</translation>
    </message>
    <message>
        <source>Put {code} on the rack</source>
        <translation>{code} ins Sortiment nehmen</translation>
    </message>
    <message>
        <source>{code} is on the rack. Undo takes it back.</source>
        <translation>{code} ist im Sortiment. Rückgängig nimmt es wieder heraus.</translation>
    </message>
    <message>
        <source>A photograph of one swatch in even light, filling it or beside a colour chart. With its width the texture is measured at true scale too.</source>
        <translation>Ein Foto eines Musters in gleichmäßigem Licht, das es ausfüllt oder das eine Farbkarte daneben zeigt. Mit seiner Breite wird auch die Struktur im wahren Maßstab gemessen.</translation>
    </message>
    <message>
        <source>Width of what it shows (may be left out)</source>
        <translation>Breite des Gezeigten (darf fehlen)</translation>
    </message>
    <message>
        <source>Code</source>
        <translation>Code</translation>
    </message>
    <message>
        <source>Name</source>
        <translation>Name</translation>
    </message>
    <message>
        <source>Finish, a guess: {finish}, because {reason}.</source>
        <translation>Finish, vermutet: {finish}, denn {reason}.</translation>
    </message>
    <message>
        <source>Surface, a guess: {surface}.</source>
        <translation>Oberfläche, vermutet: {surface}.</translation>
    </message>
    <message>
        <source>From part to part the colour moves by ΔE₀₀ {spread:.1f}.</source>
        <translation>Von Stelle zu Stelle wandert die Farbe um ΔE₀₀ {spread:.1f}.</translation>
    </message>
    <message>
        <source>By the chart its colours are good to about ΔE₀₀ {error:.1f}.</source>
        <translation>Nach der Farbkarte stimmen seine Farben auf etwa ΔE₀₀ {error:.1f}.</translation>
    </message>
    <message>
        <source>Give it these colours</source>
        <translation>Diese Farben geben</translation>
    </message>
</context>
<context>
    <name>Tag</name>
    <message>
        <source>settles</source>
        <translation>fügt sich ein</translation>
    </message>
    <message>
        <source>stands apart</source>
        <translation>steht für sich</translation>
    </message>
    <message>
        <source>fights</source>
        <translation>beißt sich</translation>
    </message>
</context>
<context>
    <name>TasteBook</name>
    <message>
        <source>Forget this shop&apos;s taste</source>
        <translation>Den Geschmack dieser Werkstatt vergessen</translation>
    </message>
    <message>
        <source>Exported to {path}.</source>
        <translation>Ausgegeben nach {path}.</translation>
    </message>
    <message>
        <source>Learn this shop&apos;s taste</source>
        <translation>Den Geschmack dieser Werkstatt lernen</translation>
    </message>
    <message>
        <source>Import a taste</source>
        <translation>Einen Geschmack einlesen</translation>
    </message>
    <message>
        <source>Imported: {count} choices.</source>
        <translation>Eingelesen: {count} Wahlen.</translation>
    </message>
</context>
<context>
    <name>TasteLine</name>
    <message>
        <source>By this shop&apos;s taste, from {count} choices</source>
        <translation>Nach dem Geschmack dieser Werkstatt, aus {count} Wahlen</translation>
    </message>
    <message>
        <source>Taste is on; the house rule still decides</source>
        <translation>Geschmack ist an; noch entscheidet die Hausregel</translation>
    </message>
    <message>
        <source>{said}. Open the taste card  (T)</source>
        <translation>{said}. Geschmackskarte öffnen  (T)</translation>
    </message>
</context>
<context>
    <name>TasteShelf</name>
    <message>
        <source>Taste</source>
        <translation>Geschmack</translation>
    </message>
    <message>
        <source>What this shop prefers, learned from its own choices and from nothing else.</source>
        <translation>Was diese Werkstatt vorzieht, gelernt aus ihren eigenen Wahlen und aus nichts sonst.</translation>
    </message>
    <message>
        <source>Order of the shortlist</source>
        <translation>Reihenfolge der Auswahl</translation>
    </message>
    <message>
        <source>House rule</source>
        <translation>Hausregel</translation>
    </message>
    <message>
        <source>This shop&apos;s taste</source>
        <translation>Geschmack dieser Werkstatt</translation>
    </message>
    <message>
        <source>Learn from the choices</source>
        <translation>Aus den Wahlen lernen</translation>
    </message>
    <message>
        <source>Answer a question</source>
        <translation>Eine Frage beantworten</translation>
    </message>
    <message>
        <source>Export</source>
        <translation>Ausgeben</translation>
    </message>
    <message>
        <source>Import</source>
        <translation>Einlesen</translation>
    </message>
    <message>
        <source>Forget all</source>
        <translation>Vergessen</translation>
    </message>
    <message>
        <source>Back to the samples</source>
        <translation>Zurück zu den Mustern</translation>
    </message>
    <message>
        <source>The shortlist is ordered by</source>
        <translation>Die Auswahl wird geordnet nach</translation>
    </message>
    <message>
        <source>What it rests on</source>
        <translation>Worauf es beruht</translation>
    </message>
    <message>
        <source>Keeping, sending away, preferring side by side and answering questions make choices, always between samples of one kind on one picture. Choices are counted as you work; nothing is learned from them until you ask for it.</source>
        <translation>Merken, Weglegen, Vorziehen nebeneinander und Antworten auf Fragen sind Wahlen, immer zwischen Mustern einer Art an einem Bild. Wahlen werden beim Arbeiten gezählt; gelernt wird daraus nichts, bevor Sie es verlangen.</translation>
    </message>
    <message>
        <source>What it changes</source>
        <translation>Was es ändert</translation>
    </message>
    <message>
        <source>A weight moves by at most {part} of its house value, or by {least} where that is more, and never turns round. No verdict changes: taste orders samples within complements, blends and clashes.</source>
        <translation>Ein Gewicht bewegt sich höchstens um {part} seines Hauswerts, oder um {least}, wo das mehr ist, und kehrt sich nie um. Kein Urteil ändert sich: Geschmack ordnet Muster innerhalb der drei Urteile.</translation>
    </message>
    <message>
        <source>Keep and carry</source>
        <translation>Aufheben und mitnehmen</translation>
    </message>
    <message>
        <source>The file holds measures and sample codes, no picture and no client. Importing takes the place of what is here; both can be undone.</source>
        <translation>Die Datei enthält Messwerte und Codes von Mustern, kein Bild und keinen Kunden. Einlesen ersetzt, was hier ist; beides lässt sich zurücknehmen.</translation>
    </message>
    <message>
        <source>Off. The house rule orders the shortlist.</source>
        <translation>Aus. Die Hausregel ordnet die Auswahl.</translation>
    </message>
    <message>
        <source>On. This shop&apos;s own weights order the shortlist.</source>
        <translation>An. Die eigenen Gewichte dieser Werkstatt ordnen die Auswahl.</translation>
    </message>
    <message>
        <source>On, but the house rule still orders the shortlist; see below why.</source>
        <translation>An, aber noch ordnet die Hausregel die Auswahl; warum, steht unten.</translation>
    </message>
    <message>
        <source>Choices: {count}, on pictures: {pictures}.</source>
        <translation>Wahlen: {count}, an Bildern: {pictures}.</translation>
    </message>
    <message>
        <source>Pairs left undecided: {count}.</source>
        <translation>Unentschiedene Paare: {count}.</translation>
    </message>
    <message>
        <source>Nothing is learned yet. It takes {fewest} choices at least; {missing} are missing.</source>
        <translation>Noch nichts gelernt. Es braucht mindestens {fewest} Wahlen; {missing} fehlen.</translation>
    </message>
    <message>
        <source>Nothing is learned yet. There are enough choices to learn from.</source>
        <translation>Noch nichts gelernt. Es sind genug Wahlen da, um zu lernen.</translation>
    </message>
    <message>
        <source>Newer choices that are not in it yet: {count}.</source>
        <translation>Neuere Wahlen, die noch nicht darin sind: {count}.</translation>
    </message>
    <message>
        <source>Nothing: the house rule stays as it is.</source>
        <translation>Nichts: Die Hausregel bleibt, wie sie ist.</translation>
    </message>
    <message>
        <source>Against the house rule:</source>
        <translation>Gegenüber der Hausregel:</translation>
    </message>
    <message>
        <source>On this picture {same} of the first {top} are the same by both. Places within a verdict by the house rule, and now:</source>
        <translation>An diesem Bild sind {same} der ersten {top} nach beiden dieselben. Plätze innerhalb eines Urteils nach der Hausregel und jetzt:</translation>
    </message>
    <message>
        <source>{before} → {after}, up: {name}</source>
        <translation>{before} → {after}, hinauf: {name}</translation>
    </message>
    <message>
        <source>{before} → {after}, down: {name}</source>
        <translation>{before} → {after}, hinunter: {name}</translation>
    </message>
    <message>
        <source>Export this shop&apos;s taste</source>
        <translation>Den Geschmack dieser Werkstatt ausgeben</translation>
    </message>
    <message>
        <source>Import a shop&apos;s taste</source>
        <translation>Den Geschmack einer Werkstatt einlesen</translation>
    </message>
    <message>
        <source>Taste (*.json)</source>
        <translation>Geschmack (*.json)</translation>
    </message>
</context>
<context>
    <name>TicketWishes</name>
    <message>
        <source>Lengths on the ticket</source>
        <translation>Längen auf dem Werkstattzettel</translation>
    </message>
    <message>
        <source>In one unit</source>
        <translation>In einer Einheit</translation>
    </message>
    <message>
        <source>In both units</source>
        <translation>In beiden Einheiten</translation>
    </message>
    <message>
        <source>A stack deeper than the rabbet</source>
        <translation>Ein Aufbau, tiefer als der Falz</translation>
    </message>
    <message>
        <source>Is refused</source>
        <translation>Wird abgelehnt</translation>
    </message>
    <message>
        <source>May stand out</source>
        <translation>Darf vorstehen</translation>
    </message>
    <message>
        <source>Save the drawings</source>
        <translation>Zeichnungen sichern</translation>
    </message>
    <message>
        <source>Face, section and every mat at true size, as SVG and DXF for cutters.</source>
        <translation>Ansicht, Schnitt und jedes Passepartout in wahrer Größe, als SVG und DXF für Schneidemaschinen.</translation>
    </message>
</context>
<context>
    <name>Tour</name>
    <message>
        <source>A job runs from top to bottom</source>
        <translation>Ein Auftrag läuft von oben nach unten</translation>
    </message>
    <message>
        <source>Six stops, from the photograph to the agreed paper. Go to any of them at any time; a tick says what is done.</source>
        <translation>Sechs Stationen, vom Foto bis zum vereinbarten Papier. Gehen Sie jederzeit zu jeder; ein Haken sagt, was fertig ist.</translation>
    </message>
    <message>
        <source>Say where the eye should rest</source>
        <translation>Sagen Sie, wo das Auge ruhen soll</translation>
    </message>
    <message>
        <source>Draw it on the picture with one of the tools below. Everything on the shelf is judged by it. Until you do, the program guesses and says so.</source>
        <translation>Zeichnen Sie es mit einem der Werkzeuge unten auf das Bild. Alles im Regal wird danach beurteilt. Bis dahin vermutet das Programm und sagt es auch.</translation>
    </message>
    <message>
        <source>The rack, best first</source>
        <translation>Das Sortiment, beste zuerst</translation>
    </message>
    <message>
        <source>Each sample comes with a reason that you can say aloud. The verdict is a measurement, not a taste: overrule it whenever you like.</source>
        <translation>Jedes Muster bringt einen Grund mit, den Sie laut sagen können. Das Urteil ist eine Messung, kein Geschmack: Setzen Sie sich darüber hinweg, wann immer Sie mögen.</translation>
    </message>
    <message>
        <source>Slide a sample over the picture</source>
        <translation>Ein Muster über das Bild schieben</translation>
    </message>
    <message>
        <source>Drag it from the shelf, or press S. It lies there at true scale, and a tag says in a word what it does where it lies. Enter lays it round the picture.</source>
        <translation>Ziehen Sie es aus dem Regal, oder drücken Sie S. Es liegt dort im wahren Maßstab, und ein Schild sagt in einem Wort, was es tut, wo es liegt. Enter legt es um das Bild.</translation>
    </message>
    <message>
        <source>Keep what is liked</source>
        <translation>Merken, was gefällt</translation>
    </message>
    <message>
        <source>Up to four rest on the rail through all steps, side by side when you wish. The screen at the lower left opens the client&apos;s view, without numbers.</source>
        <translation>Bis zu vier ruhen durch alle Schritte auf dem Bord, auf Wunsch nebeneinander. Der Bildschirm unten links öffnet die Kundenansicht, ohne Zahlen.</translation>
    </message>
    <message>
        <source>Next</source>
        <translation>Weiter</translation>
    </message>
    <message>
        <source>Leave the tour</source>
        <translation>Runde verlassen</translation>
    </message>
    <message>
        <source>To work</source>
        <translation>An die Arbeit</translation>
    </message>
</context>
<context>
    <name>TwoLooks</name>
    <message>
        <source>Above as it looks here, below as it looks in that light</source>
        <translation>Oben, wie es hier aussieht; unten, wie in jenem Licht</translation>
    </message>
</context>
<context>
    <name>_Caption</name>
    <message>
        <source>As it looks under {light}</source>
        <translation>Wie es aussieht unter {light}</translation>
    </message>
    <message>
        <source> and </source>
        <translation> und </translation>
    </message>
    <message>
        <source>{first} with {others}</source>
        <translation>{first} mit {others}</translation>
    </message>
</context>
<context>
    <name>_Empty</name>
    <message>
        <source>Bring the picture</source>
        <translation>Das Bild bringen</translation>
    </message>
    <message>
        <source>Drop a photograph of the art here, paste it, or open the file.</source>
        <translation>Ziehen Sie ein Foto des Werks hierher, fügen Sie es ein oder öffnen Sie die Datei.</translation>
    </message>
    <message>
        <source>Open a photograph</source>
        <translation>Foto öffnen</translation>
    </message>
</context>
<context>
    <name>_Live</name>
    <message>
        <source>What the camera sees</source>
        <translation>Was die Kamera sieht</translation>
    </message>
</context>
<context>
    <name>_Offer</name>
    <message>
        <source>Nothing to offer</source>
        <translation>Nichts anzubieten</translation>
    </message>
    <message>
        <source>Choose instead: {name}</source>
        <translation>Stattdessen wählen: {name}</translation>
    </message>
    <message>
        <source>Choose it instead</source>
        <translation>Stattdessen wählen</translation>
    </message>
</context>
<context>
    <name>_ZoomBar</name>
    <message>
        <source>Look from farther away</source>
        <translation>Von weiter weg schauen</translation>
    </message>
    <message>
        <source>Show the whole picture</source>
        <translation>Das ganze Bild zeigen</translation>
    </message>
    <message>
        <source>Look closer</source>
        <translation>Näher schauen</translation>
    </message>
</context>
</TS>
