// Package draw holds pictures as data: paths, text, textures and textured
// triangles in painting order. Painters are leaves and live in packages of
// their own: raster paints a List into an image without a display, the window
// uploads its textures and moves vertices, others write vector files.
//
// Coordinates are pixels, x right, y down, unless a Texture says otherwise.
package draw
