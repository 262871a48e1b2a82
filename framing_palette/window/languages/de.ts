<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="de_DE" sourcelanguage="en">
<context>
    <name>AgreeShelf</name>
    <message>
        <source>Agree</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>By the price book of this shop.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>By the example price book; its figures are invented.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>! The shop&apos;s price book cannot be read; the example stands in.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Client</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Contact</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Title of the art</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Note for the workshop</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Papers</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Price</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Hidden</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Shown</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Price book</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Look into the price book</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Paper</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Save as PDF</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Print</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Where the job stands</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Status</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>AgreeStage</name>
    <message>
        <source>Look at</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Designs</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Proposal</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Ticket</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>AgreeStep</name>
    <message>
        <source>no design agreed on yet</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>agreed on, but not measured twice</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>agreed on: </source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Agree on </source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Client</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Contact</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Title</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Note for the workshop</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Status of the job</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Where to save the drawings</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Save the page</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Saved as </source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The drawings are in {folder}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Handed to the printer.</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>Asking</name>
    <message>
        <source>Bring a picture first, to be asked about it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Every pair that could tell something was asked about on this picture.</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>AwayLine</name>
    <message>
        <source>Say nothing of why</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Its look</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Too dear</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Not at hand</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Sent away because: {reason}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{name} is sent away. Why?</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>BackupsPage</name>
    <message>
        <source>Take a backup now</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Newer jobs</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Come along</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Stay behind</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Put it back</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Jobs that are newer than the backup</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The jobs are on a server: its keeper looks after backups there.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No backup yet. One is taken every few hours while the window is open.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>One is taken every few hours; older ones are let go, the newest of each day, week and month stay. Choose one to put it back.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What is newer stays in the book. The present file is kept beside it. Close the program at other places that use this file first.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The book is as it was then; jobs begun since are missing from it. The present file is kept beside it. Close the program at other places that use it first.</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>Begin</name>
    <message>
        <source>Build what lies round the picture</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Find three designs for this picture</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Begin a design</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Bring the picture first; it is what the frame is for.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Type how large the art is. It can be measured exactly later.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Round the picture lies </source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Lay samples round the picture in Choose, or let designs be found.</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>BookShelf</name>
    <message>
        <source>Shelf</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Job</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Client</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Backups</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>In the book</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>BookStage</name>
    <message>
        <source>Client, title or number</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Code of a sample</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Begun: 2026, 2026-03 …</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Status</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Any</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Jobs, those changed last first</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The job book</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>1 job</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{count} jobs</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The shop&apos;s jobs cannot be reached for now: {fault}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No job is like that. Ask for less: fewer words, any status.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No jobs yet. A job is in the book as soon as its picture is brought.</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>Bringing</name>
    <message>
        <source>Open a photograph or a job</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Jobs (*{ending})</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Put the job into a file</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>There is no picture to paste: copy one first.</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>BuildDesigns</name>
    <message>
        <source>Layers</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Frame alone</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Mat, frame</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Two mats, frame</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Fillet, mat, frame</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>no limit</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Most that the samples may cost</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Find three designs</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Lay all beside each other</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Must be in them</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Bring a picture first; it is what the designs are for.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The limit</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Layers from the art outward</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The samples&apos; list prices together, at most</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Looking for designs</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Must be in them: </source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The best of %1 combinations.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Stop looking</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Every combination is being looked at.</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>BuildLiked</name>
    <message>
        <source>Find the nearest that works</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Use it</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A client may love what does not work. Say what is liked about the chosen part, and the nearest sample that works better keeps it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Liked about it</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Hue</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Depth</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Strength</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Surface</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Sheen</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Pattern</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Liked: </source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Choose a layer or the frame in the section first.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nothing in the rack is better than this one: it works as it is.</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>BuildSamples</name>
    <message>
        <source>Show</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Mats</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Wrapped fillets</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Wood fillets</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Liners</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Mouldings</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Samples for the chosen part, best first</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Use it</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Use it for this part</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Use the sample for the chosen part  (Enter)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Add</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Add it as a layer outside the chosen one</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Add it as a layer outside the chosen one  (S)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Keep on the rail</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Choose a sample to begin with, best first for this picture.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>For the frame: best first beside what lies in it, and for the picture.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>For layer %1: best first beside its neighbours and for the picture.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Choose a part in the section; samples here are for next to the frame.</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>BuildShelf</name>
    <message>
        <source>Shelf</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>This part</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Three designs</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Near liked</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>BuildStep</name>
    <message>
        <source>no design yet</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the stack is too deep for the rabbet</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>design</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>designs</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>Canvas</name>
    <message>
        <source>The picture</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>ChargeForm</name>
    <message>
        <source>What the line is called</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Other rates for small sizes</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Up to so many united inches, at that rate: 24: 0.70; 40: 0.80</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Minutes of labour</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Waste added, %</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Least amount of the line</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Only when the material contains</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Empty for any material.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Only for these codes</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>With * standing for anything, like M-*. Empty for all.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>For</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Charged by</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Unit</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The client sees it</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>As a line</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Only within one sum</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Move up</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Move down</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Take it out</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>ChargeRow</name>
    <message>
        <source>edit</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Edit {title}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Not in this design.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Private: the client sees it only within one sum.</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>ChooseShelf</name>
    <message>
        <source>Which for this picture?</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Taste</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No sample passes. Switch a kind off, clear the search, or let the colour go.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Samples, best first</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Samples</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Mats</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Wrapped fillets</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Wood fillets</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Liners</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Mouldings</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Show only: </source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Lay round</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Lay round the picture</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Lay the sample round the picture  (Enter)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Slide</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Slide over the picture</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Lay the sample on the picture as a strip  (S)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The measures behind the reasons</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Keep on the rail</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Send away</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Best first for this picture, with the reason. Click on a colour of the picture to look near it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Bring a picture, and the rack is judged against it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The rack is empty.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The rack is being judged.</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>ClientPage</name>
    <message>
        <source>List their jobs</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Take all out as files</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Erase …</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Erase all of this client</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The client&apos;s name</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Type the client&apos;s name to erase everything</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Erase for ever</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Keep everything</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No client</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Choose a job that has a client&apos;s name.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>1 job in the book.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{count} jobs in the book.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>All {count} jobs of {name}, with their photographs, go for ever: here and in the backups. This cannot be undone. Take them out as files first if they may be needed, and type the name to go on.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Into which folder?</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Written as files: {count}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Without their photograph, which is lost: {numbers}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Erased: {count} jobs.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Look at these yourself, they may still hold something: {files}.</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>ClientView</name>
    <message>
        <source>Framing Palette: the picture</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>CompareBoard</name>
    <message>
        <source>Side by side</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Blink between two</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Space</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Show the other one</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Back to one picture</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Blinking: {first} and {second}</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>ComparePanel</name>
    <message>
        <source>Note</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Note on {title}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Prefer it to those beside it: {title}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Lay this one round the picture: {title}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Take it off the rail: {title}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Send it away: {title}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Stands apart and belongs.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Settles into the picture or keeps back.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Fights the picture.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Preferred to {titles}.</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>ContactSheet</name>
    <message>
        <source>Width of what the photograph shows</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Choose a photograph</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Kind</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Put them on the rack</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A photograph of many swatches</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Looking for swatches</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Measuring</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Put {count} swatches of {name} on the rack</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{count} swatches are on the rack. Undo takes them all back.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{swatches} swatches, {codes} codes</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>One photograph of many swatches that lie apart on an even ground, best with a colour chart beside them. Each is found, outlined and measured.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Width of what it shows (may be left out)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Codes, left to right and row by row, one a line</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>DamagePanel</name>
    <message>
        <source>Restore the backup</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Begin with an empty book</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The job book is damaged</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The damaged file is kept beside the new one, and what is done until then is kept on this computer. Close the program at other places that use the file first.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The file of the shop&apos;s jobs cannot be read, and there is no whole backup of it. Jobs that can still be read in it come along into an empty book.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The file of the shop&apos;s jobs cannot be read. The newest whole backup is of {day}, {time}. Jobs that can still be read in the file and are newer come along.</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>DifferingBar</name>
    <message>
        <source>Save it so</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Changed here and at the other counter</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>As here</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>As there</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Here: {what}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>There: {what}</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>DrawingLayer</name>
    <message>
        <source>wheel: %1</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>DrawingTools</name>
    <message>
        <source>Move picture and regions</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Rectangle</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Ellipse</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Lasso</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Polygon: click its corners, Enter closes it</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Grow from a click; the wheel sets how far</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Show the accents</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>Facts</name>
    <message>
        <source>Sight size </source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Outside </source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Deep enough: </source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No moulding of the rack is deep enough.</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>FoundCard</name>
    <message>
        <source>Take it</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Take design </source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>Frame</name>
    <message>
        <source>Setting out the samples</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>GapList</name>
    <message>
        <source>Open a picture to see which of its colours the rack cannot answer.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The rack answers everything: each of {asked} colours that this picture asks for has a sample in stock within ΔE₀₀&#xa0;{near:.0f}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{gaps} of {asked} colours that this picture asks for, itself or more quietly, have nothing in stock within ΔE₀₀&#xa0;{near:.0f}.</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>GapRow</name>
    <message>
        <source>in the picture</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>weaker than in the picture</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>paler than in the picture</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>deeper than in the picture</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nearest: </source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nothing in stock at all</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>GreySteps</name>
    <message>
        <source>Grey steps from dark to light</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>HiddenList</name>
    <message>
        <source>These samples are in no list. Show one again here.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nothing is hidden. Hide a sample that the shop does not offer any more.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Show {name} again</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Show</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Show again: </source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>ImportHistory</name>
    <message>
        <source>Brought in so far</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{source}, {day}: {summary}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Take out {source} and the {count} brought in after it</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Take out {source}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Take out</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>ImportSheet</name>
    <message>
        <source>What the rows are</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Choose a file</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Match the columns</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Bring in</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Let it be</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A spreadsheet or an instrument&apos;s export</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Tables and measurements</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Brought in. Undo takes it out again.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Bring in </source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Reading the file</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Drop a spreadsheet (CSV) or an instrument&apos;s export (CGATS, CxF) here, or choose one. You see what it changes before anything is changed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Rows that name no kind are</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>and {count} more changes</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{new} new, {changed} changed, {same} as they are.</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>IntakeCameraView</name>
    <message>
        <source>Freeze</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>This is the plain sheet</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Another camera</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Put the camera away</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Keep everything still: {share} % of the frames are taken.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Waiting for the camera.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Freeze takes the mean of 16 frames, which has a quarter of their noise. Keep hands, art and lamps still.</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>IntakeShelf</name>
    <message>
        <source>Intake</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>New photograph arrived: </source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Open </source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Square up and correct</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Find corners and chart</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Back to the photograph as it is</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Mark</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The art</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The chart</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A grey</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Look</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Corners</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Before, after</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Mark by hand</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Drag a corner. N takes the next one, the arrows move it by a pixel.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Look at</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Photograph of a plain sheet</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Leave the light as it is</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Even out the light</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>How large the art is</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Leave it empty for not yet. Measure exactly later, twice.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Photographs</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Open another</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Camera above the table</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Watch a folder</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>New photographs in a watched folder are offered as they arrive.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Bring the picture first.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Least sure patches (upper half seen, lower half should be)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A white or grey sheet, photographed from the same place under the same light, tells how the light falls off.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Drop, paste or open a photograph of the art.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Even light without glare on the chart would raise it further.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What would raise it: put the colour chart beside the art, flat and out of glare, and take the photograph again. Next best is a grey card to pick from.</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>IntakeStep</name>
    <message>
        <source>no picture yet</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>size not known yet</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>colours not checked</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>taken in</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Watched: </source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The chart&apos;s corners</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The art&apos;s corners</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Pick a grey</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Find corners and chart</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The photograph as it is</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Which photograph shows the plain sheet?</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Leave the light as it is</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Watch which folder?</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Open another</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>IntakeView</name>
    <message>
        <source>as photographed</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>taken in</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The art&apos;s corners</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The chart&apos;s corners</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Pick a neutral grey</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Before and after</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The photograph: </source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>Intaking</name>
    <message>
        <source>Even out by a plain sheet</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>JobBook</name>
    <message>
        <source>The backup is in its place; {count} newer jobs came along.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The backup is in its place; 1 newer job came along.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What was there before is kept as {name}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Saved now, after waiting on this computer: {numbers}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>On this computer alone, because another counter changed the same: {numbers}. Open it from the job book and choose.</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>JobCard</name>
    <message>
        <source>Open</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Open the job</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Copy</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Copy the job under a new number</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Into a file</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Put the job into a file of its own</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Open a job from a file</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Status</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Something decided</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Add a line to the history</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Choose a job to see it here.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Where the job stands</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What was decided</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Jobs (*{ending})</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Put the job into a file</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>begun {day}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>on the desk</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>JobLine</name>
    <message>
        <source>Search   /</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Search the samples</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nothing to undo</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nothing to redo</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The rail, away or back</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The shelf, away or back</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No picture yet</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Undo</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Redo</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>nothing</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>JobRows</name>
    <message>
        <source>on this computer alone</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>today {time}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>yesterday {time}</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>KeysSheet</name>
    <message>
        <source>Keys</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The tour again</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Put the sheet away</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>Ledger</name>
    <message>
        <source>This is the copy, not measured yet and open.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>It is in the file {name}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Status of the job</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A line of the history</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>LevelMap</name>
    <message>
        <source>L* {low:.0f} to {high:.0f}: {count:,}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Show these on the map; once more shows every lightness again</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>LightBar</name>
    <message>
        <source>Seen under</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No two colours here match so closely that a light could part them.</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>LightCard</name>
    <message>
        <source>At home under</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>LightPicker</name>
    <message>
        <source>The light in which it is seen</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>LightStatement</name>
    <message>
        <source>Light</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Not known</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Observer</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>2 degrees</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>10 degrees</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>For which light do its colours hold?</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The file does not say. A wrong guess would be believed everywhere, so the colours are taken only when you know; what you state is kept with them.</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>LightnessBar</name>
    <message>
        <source>Drag to show one slice of lightness; double-click to show all  (Page keys)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>light</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>dark</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>all</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>to</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Lightness shown: </source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>LookView</name>
    <message>
        <source>The picture with {title}</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>MapBar</name>
    <message>
        <source>Lay side by side what a lasso holds</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Look from farther away</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Show all that is wanted</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Look closer</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>Marks</name>
    <message>
        <source>Favourite</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Out of stock</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Hide</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Hide the sample from every list</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Edit</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Edit name and price</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Name</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Price</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>empty: the maker&apos;s</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Name and price of {name}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The shop says of {name}:</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Favourite: {name}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Out of stock: {name}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>In stock again: {name}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Hide {name}</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>MatchSheet</name>
    <message>
        <source>Lengths without a unit are</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Millimetres</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Centimetres</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Inches</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Decimals come after</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What the file uses</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A point</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A comma</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Back to the map</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>not in the file</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Not taken: {names}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the whole row</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Row {row}, {where}: {reason}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Which column is which</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The first rows as they are read</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>All rows</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>MeasureStage</name>
    <message>
        <source>Measure both again</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Measure twice, cut once</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Two measurements, best by two people. The first card turns away when it is done, so that the second is taken without seeing it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Measurement {number} of 2</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Measurement {number} of 2 of {piece}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Measure again</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>They do not agree.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>They agree.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Piece of art</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Art {number}: {count} of 2</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Art {number}: agrees</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Art {number}: at odds</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Openings go by {size}, the smaller of both readings.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Diagonals were not taken, so a lean was not looked for.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The diagonals say that it is square.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>It leans by {lean}; openings were made safe for that.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>First measurement</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Second measurement</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>First measurement of {piece}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Second measurement of {piece}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Bring the picture first.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Measure the art itself.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Waits until the first is done.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Turned away until the second is done.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Measure anew, without asking for the first.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Taken by {hand} at {time}.</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>MeasureStep</name>
    <message>
        <source>both measurements agree</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{taken} of {needed} measurements</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>MeasuresPanel</name>
    <message>
        <source>Choose a sample to see its measures.</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>MeasuringCard</name>
    <message>
        <source>Diagonals too</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Done: turn it away</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Width</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Height</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Initials</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>From top left</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>From top right</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>first</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>second</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>measurement</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>NearPage</name>
    <message>
        <source>Samples near it, nearest first</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Keep</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Keep the sample on the rail</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Side by side</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>In the lasso</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>sample</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>samples</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>None of the samples shown comes within ΔE₀₀&#xa0;{near:.0f}. Show more families, kinds or lightness.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nothing looked at yet</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Click a sample, a ring or a bare spot of the map to see what lies near it. Hold Shift and draw round samples to lay them side by side.</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>NoticeBar</name>
    <message>
        <source>Put this notice away</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>OptionBoard</name>
    <message>
        <source>There is no design to agree on yet: build one, or let three be found.</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>OptionCard</name>
    <message>
        <source>Choose this one</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Chosen</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>OptionTabs</name>
    <message>
        <source>Begin another design from this one</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Take this design away</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Take in hand: </source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>PaletteStrip</name>
    <message>
        <source>Palette: </source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>PapersView</name>
    <message>
        <source>Pages</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The page is being set.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Page </source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>Paperwork</name>
    <message>
        <source>Bring the picture and build a design first.</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>PartList</name>
    <message>
        <source>Moulding</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>frame</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>glazing, </source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No glazing</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the art stays open to touch and dust</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The art</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>covered on each side by</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Board</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>mount board</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>backing, </source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Overlap over the art</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Width that shows of </source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Glazing</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Glass</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Acrylic</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>None</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Farther to the front</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nearer to the art</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Take the layer out</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>foot wider by</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Wider at the foot by</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Overlap</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Width of </source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Foot of the mat</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Glazing: </source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>Path</name>
    <message>
        <source>More</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>PiecesRow</name>
    <message>
        <source>Pieces of art in one frame</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>One</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Two</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Three</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Four</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Six</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>They stand</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>In a row</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>One below the other</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>In two rows</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Mat between two openings</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Mat between</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>PlaceSetting</name>
    <message>
        <source>File or address of a server</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Where the jobs are kept from the next start on</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Folder of the photographs</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Folder of the photographs that all share</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Try it and use it</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>This computer&apos;s own file</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Now: {address}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The environment names it, so it cannot be changed here.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Write a file or an address first.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Trying it …</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>It is used when the window opens next; {count} jobs are there.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>This computer&apos;s own file is used when the window opens next.</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>PreviewPane</name>
    <message>
        <source>The framed picture</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The frame is being drawn.</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>PriceKeeper</name>
    <message>
        <source>Take the prices of {name}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The price book is being read.</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>PriceShelf</name>
    <message>
        <source>Back</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Back to the papers</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Add a charge</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Take over a file</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The tax is</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Added</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Within the rates</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The price book is being read.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Kept for this shop. Every change holds at once and can be undone.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>All figures here are invented: put your own in their place. Every change holds at once and can be undone.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{fault} The example stands in its place; once you change it, the old file is set aside, not lost.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The design in hand cannot be priced yet.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Build a design; what it costs stands here.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{name}: net {net}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>, {tax}: {amount}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Currency</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Three letters, like EUR.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Least net price of a job</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Name of the tax</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Tax, %</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Round each line to</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Round the total to</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>One line for all that is private</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The client sees the sum of the private lines under this title.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Price book</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The total</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Price book: {field}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Price of {title}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Take {title} out of the price book</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Move {title} in the price book</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>New charge</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Add a charge to the price book</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A price book</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Price books</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>ProbeChip</name>
    <message>
        <source>No colour to look near</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Near </source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>, let it go</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Let the colour go</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>ProblemReport</name>
    <message>
        <source>Report a problem</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Looking …</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Written as {name}. Please look through it before you send it.</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>QuestionBoard</name>
    <message>
        <source>Which for this picture?</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Neither</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Prefer neither of the two</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Prefer neither; the pair is not asked about again  (N)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Back to one picture</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Judge by the look alone. {count} answered on this picture. Answers are kept for this shop; nothing is learned from them until you ask for it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Prefer {name}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{number}   This one</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>RackList</name>
    <message>
        <source>Samples of the rack</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>In order of</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Hue</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Lightness</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Name</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Kind</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No sample passes. Show all families, all kinds and every lightness again.</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>RackMap</name>
    <message>
        <source>out of stock</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Map of the rack</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>RackRows</name>
    <message>
        <source>out of stock</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>favourite</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>RackShelf</name>
    <message>
        <source>Near</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Gaps</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Import</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Swatch</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Hidden</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Shelf</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Rack</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>RackStage</name>
    <message>
        <source>Family</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>All</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>In stock</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Show only what is in stock</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Favourites</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Show only the shop&apos;s favourites</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Narrow down</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Show families and kinds</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Show as</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Map</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Levels</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>List</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Show only: </source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{shown:,} of {there:,} samples</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>a hollow tile is out of stock</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>rings are the picture&apos;s colours, a crossed ring is a gap</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>Rail</name>
    <message>
        <source>Side by side</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Keep the design in hand, or what is laid round</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>ReadShelf</name>
    <message>
        <source>What is in it</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Bring a picture first.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Draw where the eye should rest. Until then that place is a guess, and the shelf judges by it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Point at a colour to see where it lives in the picture.</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>RecentJob</name>
    <message>
        <source>Open {job}</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>RecentJobs</name>
    <message>
        <source>Worked on last</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>RegionCard</name>
    <message>
        <source>Name of the region</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Delete the region</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Eye rests here</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Supports</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Background</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>RegionLayer</name>
    <message>
        <source>a guess</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>SampleList</name>
    <message>
        <source>up {places}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>down {places}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Complements</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Blends</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Clashes</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>open</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>closed</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>By taste {moved}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>more that fit less well: search, or show one kind.</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>Saving</name>
    <message>
        <source>The job is in the file {name} as well.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Another job has this number, so this one is {number} now.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Changed at the other counter</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Changed at the other counter, and brought in here.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Changed at the other counter, and brought in here: {what}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>cannot be saved</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>saving</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>kept on this computer</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>kept on this computer until you choose</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>erased at another counter</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>This job was erased at another counter; what is done here is not kept.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>saved {at}</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>ScaleLayer</name>
    <message>
        <source>The size of the art is not known yet</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>SectionView</name>
    <message>
        <source>Overlap</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Width of </source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Section through the frame: </source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>SettingsShelf</name>
    <message>
        <source>Settings</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>They are kept for this shop&apos;s computer.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Looking</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Lightness of the surround</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Surround</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>How light the grey round the picture is, L* 20 to 95. Colours are judged against it; 60 is the usual one.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Theme</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>As the desktop</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Light</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Dark</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Language / Sprache</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>As the computer</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Takes hold when the window opens next.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Size of the interface</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Motion</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Gentle cross-fades</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>None</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Measures</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Unit</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Inches</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Millimetres</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Centimetres</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Fractions of an inch down to</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Only how lengths are shown: inside they are exact.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Mat laid round the picture</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>How wide a mat is shown while you choose. The design sets the true border.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Two measurements may differ by</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>More than this stops the ticket and says which side.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Taste</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The shortlist is ordered by</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>House rule</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>This shop&apos;s taste</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What the shop preferred, side by side, in questions and by keeping and sending away, can move samples within their verdict. What it rests on stands on the taste card in Choose (T).</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Beside the client</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Numbers on the picture</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Shown</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Hidden</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The tag of a strip says its word with or without ΔE₀₀.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>This screen</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A screen shows colour only approximately. Confirm every choice with the sample itself under good light. Sliding samples here first spares delicate art.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A simple check</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Every step should be seen apart from its neighbours, and none should look tinted. If the ends run together, set the screen&apos;s brightness first. The system tells this program nothing of the screen&apos;s profile.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The shop&apos;s jobs</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Where they are kept</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A file of this computer, or the address of a PostgreSQL server that several counters share, such as postgresql+psycopg://user@host/shop; they share a folder of photographs too. Leave the password to the database&apos;s own password file.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>When something goes wrong</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Writes one file with versions, the health of this installation and the end of the log; no job, picture or name is in it. Nothing is sent by the program.</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>Shell</name>
    <message>
        <source>Framing Palette</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The job book</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The rack</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The client&apos;s view</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Keys</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Settings</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Opening the picture</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Loading the rack</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Reading the picture</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Judging the rack</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>SizeFields</name>
    <message>
        <source>Width of the art</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Height of the art</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Width</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Height</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>SizeRow</name>
    <message>
        <source>how</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>How it came about: </source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>SizesShelf</name>
    <message>
        <source>Every size</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Build a design first; its sizes and sums stand here.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the design</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Of {design}. &quot;How&quot; shows the sum behind a figure.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Of {design}. By the size that was told, not measured yet.</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>Slot</name>
    <message>
        <source>Place %1, empty</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>K keeps a sample here</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>Stop</name>
    <message>
        <source>done</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>open</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>needs attention</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>StripTools</name>
    <message>
        <source>Turn the strip</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Bend it into a corner, or straighten it</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Lay it round the picture</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Keep it on the rail</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Send the sample away</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Take the strip off the picture</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>SwatchFolder</name>
    <message>
        <source>Choose a folder</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Stop</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Go on</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Kind</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Put them on the rack</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A folder of swatch photographs</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Measuring</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Stopped. What is measured is kept; go on when you like.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Put {count} swatches of {name} on the rack</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{count} swatches are on the rack. Undo takes them all back.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{good} measured, {bad} could not be.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A folder with one photograph a swatch, each called by its code. They are measured side by side, and what is measured once is not measured again.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Millimetres per pixel of all of them (may be left out)</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>SwatchPage</name>
    <message>
        <source>What is photographed</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>One swatch</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Contact sheet</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Folder</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>SwatchPhoto</name>
    <message>
        <source>Drag a corner or a whole outline. N and P choose the next and the last one, arrow keys move it, Delete takes it away. A broken line is the colour chart.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>One more outline</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Take the chosen one away</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Back to the map</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>SwatchPlate</name>
    <message>
        <source>Photograph of swatches</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Swatch {number} of {count} is chosen.</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>SwatchSheet</name>
    <message>
        <source>Width of what the photograph shows</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Choose a photograph</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Kind</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Put it on the rack</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A photograph of the swatch alone</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Opening the photograph</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Measuring</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Measure {code} anew</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Put {code} on the rack</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{code} is on the rack. Undo takes it back.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A photograph of one swatch in even light, filling it or beside a colour chart. With its width the texture is measured at true scale too.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Width of what it shows (may be left out)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Code</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Name</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Finish, a guess: {finish}, because {reason}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Surface, a guess: {surface}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>From part to part the colour moves by ΔE₀₀ {spread:.1f}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>By the chart its colours are good to about ΔE₀₀ {error:.1f}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Give it these colours</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>TasteBook</name>
    <message>
        <source>Forget this shop&apos;s taste</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Exported to {path}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Learn this shop&apos;s taste</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Import a taste</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Imported: {count} choices.</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>TasteLine</name>
    <message>
        <source>By this shop&apos;s taste, from {count} choices</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Taste is on; the house rule still decides</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{said}. Open the taste card  (T)</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>TasteShelf</name>
    <message>
        <source>Taste</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What this shop prefers, learned from its own choices and from nothing else.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Order of the shortlist</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>House rule</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>This shop&apos;s taste</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Learn from the choices</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Answer a question</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Export</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Import</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Forget all</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Back to the samples</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The shortlist is ordered by</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What it rests on</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Keeping, sending away, preferring side by side and answering questions make choices, always between samples of one kind on one picture. Choices are counted as you work; nothing is learned from them until you ask for it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What it changes</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A weight moves by at most {part} of its house value, or by {least} where that is more, and never turns round. No verdict changes: taste orders samples within complements, blends and clashes.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Keep and carry</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The file holds measures and sample codes, no picture and no client. Importing takes the place of what is here; both can be undone.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Off. The house rule orders the shortlist.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>On. This shop&apos;s own weights order the shortlist.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>On, but the house rule still orders the shortlist; see below why.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Choices: {count}, on pictures: {pictures}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Pairs left undecided: {count}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nothing is learned yet. It takes {fewest} choices at least; {missing} are missing.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nothing is learned yet. There are enough choices to learn from.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Newer choices that are not in it yet: {count}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nothing: the house rule stays as it is.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Against the house rule:</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>On this picture {same} of the first {top} are the same by both. Places within a verdict by the house rule, and now:</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{before} → {after}, up: {name}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{before} → {after}, down: {name}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Export this shop&apos;s taste</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Import a shop&apos;s taste</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>TicketWishes</name>
    <message>
        <source>Lengths on the ticket</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>In one unit</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>In both units</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A stack deeper than the rabbet</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Is refused</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>May stand out</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Save the drawings</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Face, section and every mat at true size, as SVG and DXF for cutters.</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>Tour</name>
    <message>
        <source>Next</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Leave the tour</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>To work</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>TwoLooks</name>
    <message>
        <source>Above as it looks here, below as it looks in that light</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>_Caption</name>
    <message>
        <source>As it looks under {light}</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>_Empty</name>
    <message>
        <source>Bring the picture</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Drop a photograph of the art here, paste it, or open the file.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Open a photograph</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>_Live</name>
    <message>
        <source>What the camera sees</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>_Offer</name>
    <message>
        <source>Nothing to offer</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Choose instead: </source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Choose it instead</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>_ZoomBar</name>
    <message>
        <source>Look from farther away</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Show the whole picture</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Look closer</source>
        <translation type="unfinished"></translation>
    </message>
</context>
</TS>
