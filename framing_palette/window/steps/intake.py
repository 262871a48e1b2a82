"""Intake: the photograph is brought, squared up and corrected; its colours trusted or not."""

from dataclasses import replace
from pathlib import Path

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFileDialog, QStackedWidget, QVBoxLayout, QWidget

from framing_palette.jobs.taking_in import HowTaken
from framing_palette.picture.pictures import TrustGrade
from framing_palette.units import Length
from framing_palette.window.canvas.canvas import Canvas
from framing_palette.window.canvas.outlook import Outlook
from framing_palette.window.canvas.stage import Stage
from framing_palette.window.file_drops import FileDrops
from framing_palette.window.intake_camera import IntakeCamera
from framing_palette.window.intake_camera_view import IntakeCameraView
from framing_palette.window.intake_shelf import IntakeShelf
from framing_palette.window.intake_view import Hand, IntakeView
from framing_palette.window.intaking import Intaking
from framing_palette.window.steps.step import Counter, Standing, Step
from framing_palette.window.watched_folder import WatchedFolder


class IntakeStep(Step):
    """From a photograph to a picture."""

    key = "intake"
    icon = "intake"

    def __init__(self, counter: Counter) -> None:
        super().__init__(counter)
        self.intaking = Intaking(self.session, counter.errands, self)
        self.camera = IntakeCamera(self.session, counter.errands, self)
        self.watched = WatchedFolder(self)
        self.stage_widget: IntakeStage | None = None
        self.shelf_widget: IntakeShelf | None = None
        self._arrived: Path | None = None
        self.watched.arrived.connect(self._offer)
        self.camera.frozen.connect(self.picture_dropped)
        self.camera.sheet_frozen.connect(self.intaking.even_out_by)
        self.camera.changed.connect(self._tell_camera)
        for signal in (self.session.picture_changed, self.session.job_changed):
            signal.connect(self.standing_changed)

    def stage(self) -> QWidget:
        """Make the photograph with its handles."""
        stage = IntakeStage(self.counter, self.intaking, self.camera)
        stage.empty.picture_wanted.connect(self.picture_wanted)
        stage.empty.picture_dropped.connect(self.picture_dropped)
        stage.view.marked.connect(self._mark)
        stage.view.grey_picked.connect(self._pick_grey)
        self.stage_widget = stage
        return stage

    def shelf(self) -> QWidget:
        """Make trust, marks and size."""
        shelf = IntakeShelf(self.session, self.intaking)
        shelf.hand_picked.connect(self._take_hand)
        shelf.after_picked.connect(self._look)
        shelf.asked.connect(self._do)
        shelf.chart_width.taken.connect(self._take_chart_width)
        self.shelf_widget = shelf
        return shelf

    def standing(self) -> Standing:
        """Done once there is a picture of known size."""
        picture, job = self.session.picture, self.session.desk.job
        if picture is None or job is None:
            return Standing.OPEN
        return Standing.DONE if job.art_size else Standing.OPEN

    def standing_words(self) -> str:
        """Tell what is missing."""
        picture, job = self.session.picture, self.session.desk.job
        if picture is None or job is None:
            return self.tr("no picture yet")
        if job.art_size is None:
            return self.tr("size not known yet")
        if picture.colour_trust.grade is TrustGrade.UNKNOWN:
            return self.tr("colours not checked")
        return self.tr("taken in")

    def arrive(self) -> None:
        """Have the photograph ready."""
        self.intaking.arrive()

    def watch(self, folder: Path) -> None:
        """Offer new photographs of a folder as they arrive."""
        self.watched.watch(folder)
        if self.shelf_widget is not None:
            self.shelf_widget.say_watched(self.tr("Watched: {folder}").format(folder=folder.name))

    def _mark(self, corners: object) -> None:
        view, how = self.stage_widget.view if self.stage_widget else None, self.intaking.how
        if view is None or not isinstance(corners, tuple):
            return
        if view.hand is Hand.CHART:
            self.intaking.wish(
                self.tr("The chart's corners"), replace(how, chart=corners), merge="chart"
            )
        else:
            self.intaking.wish(
                self.tr("The art's corners"), replace(how, corners=corners), merge="corners"
            )

    def _pick_grey(self, place: object) -> None:
        if isinstance(place, tuple):
            how = replace(self.intaking.how, grey=place)
            self.intaking.wish(self.tr("Pick a grey"), how)

    def _take_chart_width(self, width: object) -> None:
        shelf = self.shelf_widget
        if (
            shelf is None
            or not isinstance(width, Length)
            or not shelf.chart_width.edit.isModified()
        ):
            return
        if width.mm <= 0:
            shelf.chart_width.say(self.tr("Write a width above zero."))
            return
        how = replace(self.intaking.how, chart_width=width)
        self.intaking.wish(self.tr("The chart's width"), how)

    def _take_hand(self, hand: object) -> None:
        if self.stage_widget is not None and self.shelf_widget is not None:
            self.stage_widget.view.take_hand(Hand(str(hand)))
            self.shelf_widget.looks.show_value("corners")

    def _look(self, look: object) -> None:
        if self.stage_widget is not None:
            self.stage_widget.view.show_after(after=look == "after")

    def _do(self, asked: str) -> None:
        if asked == "take in":
            self.intaking.wish(self.tr("Find corners and chart"), HowTaken())
        elif asked == "forget":
            self.intaking.wish(self.tr("The photograph as it is"), None)
        elif asked == "sheet":
            name, _ = QFileDialog.getOpenFileName(
                self.stage_widget, self.tr("Which photograph shows the plain sheet?")
            )
            if name:
                self.intaking.even_out_by(Path(name))
        elif asked == "leave light":
            words = self.tr("Leave the light as it is")
            self.intaking.wish(words, replace(self.intaking.how, light="none"))
        elif asked == "open":
            self._open()
        elif asked == "camera":
            self.camera.put_on()
        else:
            name = QFileDialog.getExistingDirectory(
                self.stage_widget, self.tr("Watch which folder?")
            )
            if name:
                self.watch(Path(name))

    def _tell_camera(self) -> None:
        if self.shelf_widget is not None:
            self.shelf_widget.say_camera(self.camera.fault, is_on=self.camera.is_on)

    def _open(self) -> None:
        """Begin a job on the photograph that arrived, or let one be chosen."""
        arrived, self._arrived = self._arrived, None
        if arrived is None:
            self.picture_wanted.emit()
            return
        self.picture_dropped.emit(arrived)
        if self.shelf_widget is not None:
            self.shelf_widget.open_button.setText(self.tr("Open another"))
            self.shelf_widget.open_button.setAccessibleName(self.tr("Open another"))

    def _offer(self, path: object) -> None:
        if not isinstance(path, Path):
            return
        if self.session.picture is None:
            self.picture_dropped.emit(path)
        elif self.shelf_widget is not None:
            self._arrived = path
            self.shelf_widget.offer(path.name)


class IntakeStage(FileDrops):
    """The photograph, the camera, or what to do while there is neither."""

    def __init__(self, counter: Counter, intaking: Intaking, camera: IntakeCamera) -> None:
        super().__init__()
        self.view = IntakeView(counter.session, intaking)
        canvas = Canvas(counter.session, Outlook(self))
        canvas.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.empty = Stage(counter.session, canvas)
        self.camera_view = IntakeCameraView(counter.session, camera)
        self._intaking = intaking
        self._camera = camera
        self._stack = QStackedWidget()
        for page in (self.empty, self.view, self.camera_view):
            self._stack.addWidget(page)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self._stack)
        intaking.photograph_changed.connect(self._tell)
        camera.changed.connect(self._tell)
        self._tell()

    def take_dropped(self, path: Path) -> None:
        """Begin a job on the photograph."""
        self.empty.picture_dropped.emit(path)

    def _tell(self) -> None:
        plain = self.view if self._intaking.photograph is not None else self.empty
        wanted = self.camera_view if self._camera.is_on else plain
        if wanted is not self._stack.currentWidget():
            self._stack.setCurrentWidget(wanted)
            if wanted is self.camera_view:
                wanted.setFocus(Qt.FocusReason.OtherFocusReason)
