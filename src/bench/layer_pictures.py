"""Renders layers of a GeoPackage by QGIS, as a user sees them who opens the file or its project.

    layer_pictures.py FOLDER OUTPUT [LON,LAT]

FOLDER has one GeoPackage with its project (.qgz) beside it. Written to OUTPUT: for each layer, and for the project as a whole, one PNG
at each of three scales, around the place of the best rank (or the given one); legend.png; and what QGIS had to say, on the screen.
A layer has the default style of the GeoPackage where there is one, else that of the project.

Needs python3-qgis; set QT_QPA_PLATFORM=offscreen where there is no screen.
"""

import glob
import os
import sys

from qgis.core import (
    QgsApplication,
    QgsCoordinateReferenceSystem,
    QgsCoordinateTransform,
    QgsExpressionContext,
    QgsExpressionContextUtils,
    QgsLayerTreeModel,
    QgsLegendRenderer,
    QgsLegendSettings,
    QgsMapRendererParallelJob,
    QgsMapSettings,
    QgsPointXY,
    QgsProject,
    QgsRectangle,
    QgsRenderContext,
    QgsVectorLayer,
)
from qgis.PyQt.QtCore import QSize
from qgis.PyQt.QtGui import QColor, QFont, QImage, QPainter

WIDTH, HEIGHT, DPI = 900, 620, 120
METERS_PER_INCH = 0.0254
SCALES = {"city": None, "district": 6000, "street": 1000}


def read_project(folder):
    project = QgsProject.instance()
    files = glob.glob(os.path.join(folder, "*.qgz"))
    if not files or not project.read(files[0]):
        sys.exit("no project that QGIS can read in " + folder)
    for layer in project.mapLayers().values():
        if not layer.isValid():
            sys.exit("QGIS cannot open " + layer.source())
    return project


def with_own_style(layer):
    """The same layer as a user adds it to an empty map; its default style in the GeoPackage applies."""
    alone = QgsVectorLayer(layer.source(), layer.name(), "ogr")
    _, found = alone.loadDefaultStyle()
    if not found:
        print("no default style in the file, taken from the project:", layer.name())
        alone = layer.clone()
        alone.setScaleBasedVisibility(False)
    return alone


def best_place(project):
    """The middle of the line of the best rank, in degrees; else the middle of all."""
    for layer in project.mapLayers().values():
        for column in ("rank", "best_rank", "place", "corridor", "year"):
            if layer.fields().indexOf(column) < 0 or layer.geometryType() != 1:
                continue
            rows = [f for f in layer.getFeatures('"%s" = 1' % column) if f.hasGeometry()]
            if rows:
                center = rows[0].geometry().boundingBox().center()
                return transform(layer.crs(), "EPSG:4326", project).transform(center)
    layer = list(project.mapLayers().values())[0]
    return transform(layer.crs(), "EPSG:4326", project).transform(layer.extent().center())


def transform(one, other, project):
    if isinstance(other, str):
        other = QgsCoordinateReferenceSystem(other)
    return QgsCoordinateTransform(one, other, project)


def view(project, layers, scale, place):
    if scale is None:
        whole = QgsRectangle()
        for layer in project.mapLayers().values():
            if layer.featureCount() > 0:
                whole.combineExtentWith(transform(layer.crs(), project.crs(), project).transformBoundingBox(layer.extent()))
        whole.scale(1.04)
        return whole
    center = transform(QgsCoordinateReferenceSystem("EPSG:4326"), project.crs(), project).transform(place)
    meters = scale * METERS_PER_INCH / DPI
    return QgsRectangle(
        center.x() - WIDTH * meters / 2, center.y() - HEIGHT * meters / 2,
        center.x() + WIDTH * meters / 2, center.y() + HEIGHT * meters / 2)


def picture(project, layers, extent, file):
    settings = QgsMapSettings()
    settings.setLayers(layers)
    settings.setDestinationCrs(project.crs())
    settings.setTransformContext(project.transformContext())
    settings.setOutputSize(QSize(WIDTH, HEIGHT))
    settings.setOutputDpi(DPI)
    settings.setExtent(extent)
    settings.setBackgroundColor(QColor("#ffffff"))
    settings.setFlag(QgsMapSettings.Antialiasing, True)
    settings.setFlag(QgsMapSettings.DrawLabeling, True)
    context = QgsExpressionContext()
    context.appendScopes([
        QgsExpressionContextUtils.globalScope(),
        QgsExpressionContextUtils.projectScope(project),
        QgsExpressionContextUtils.mapSettingsScope(settings),
    ])
    settings.setExpressionContext(context)
    job = QgsMapRendererParallelJob(settings)
    job.start()
    job.waitForFinished()
    for error in job.errors():
        print("error:", error.layerID, error.message)
    job.renderedImage().save(file)
    print(os.path.basename(file), "1 :", round(settings.scale()))


def legend(root, file):
    model = QgsLayerTreeModel(root)
    settings = QgsLegendSettings()
    settings.setTitle("")
    renderer = QgsLegendRenderer(model, settings)
    per_mm = DPI / 25.4
    size = renderer.minimumSize()
    image = QImage(int(size.width() * per_mm) + 20, int(size.height() * per_mm) + 20, QImage.Format_RGB32)
    image.setDotsPerMeterX(int(DPI / METERS_PER_INCH))
    image.setDotsPerMeterY(int(DPI / METERS_PER_INCH))
    image.fill(QColor("#ffffff"))
    painter = QPainter(image)
    painter.setRenderHint(QPainter.Antialiasing)
    painter.scale(per_mm, per_mm)
    context = QgsRenderContext.fromQPainter(painter)
    context.setFlag(QgsRenderContext.Antialiasing, True)
    renderer.setLegendSize(size)
    renderer.drawLegend(context)
    painter.end()
    image.save(file)


def shown(project, scale):
    """The layers that are switched on, from the top; those of other scales left out."""
    order = [node.layer() for node in project.layerTreeRoot().findLayers() if node.isVisible()]
    return [layer for layer in order if scale is None or layer.isInScaleRange(scale)]


def main():
    folder, output = sys.argv[1:3]
    os.makedirs(output, exist_ok=True)
    app = QgsApplication([], True)
    app.setFont(QFont("DejaVu Sans", 9))
    app.initQgis()
    QgsApplication.messageLog().messageReceived.connect(lambda text, tag, level: print("message:", tag, text))
    project = read_project(os.path.abspath(folder))
    place = best_place(project)
    if len(sys.argv) > 3:
        place = QgsPointXY(*[float(part) for part in sys.argv[3].split(",")])
    for name, scale in SCALES.items():
        extent = view(project, None, scale, place)
        picture(project, shown(project, None), extent, os.path.join(output, "project-%s.png" % name))
        for layer in project.mapLayers().values():
            table = layer.source().split("layername=")[1]
            picture(project, [with_own_style(layer)], extent, os.path.join(output, "%s-%s.png" % (table, name)))
    legend(project.layerTreeRoot(), os.path.join(output, "legend.png"))
    app.exitQgis()


main()
