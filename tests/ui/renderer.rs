//! A renderer on the CPU: the same bytes on every machine, no GPU, nothing to install. Triangles by the top-left rule, textures
//! bilinear and clamped, premultiplied blending in gamma space, clip rectangles rounded to pixels.

use std::collections::HashMap;

use egui::epaint::{ImageData, Primitive, Vertex};
use egui::{Color32, ColorImage, Context, FullOutput, Mesh, Pos2, Rect, TextureId, TexturesDelta};
use egui_kittest::TestRenderer;
use image::RgbaImage;

#[derive(Default)]
pub struct CpuRenderer {
    textures: HashMap<TextureId, ColorImage>,
}

impl TestRenderer for CpuRenderer {
    fn handle_delta(&mut self, delta: &mut TexturesDelta) {
        for (id, patches) in delta.set.drain() {
            for patch in patches {
                let ImageData::Color(image) = &patch.image;
                match patch.pos {
                    None => {
                        self.textures.insert(id, (**image).clone());
                    }
                    Some([x, y]) => {
                        let texture = self.textures.get_mut(&id).expect("a patch follows its texture");
                        for row in 0..image.size[1] {
                            let from = row * image.size[0];
                            let to = (y + row) * texture.size[0] + x;
                            texture.pixels[to..to + image.size[0]]
                                .copy_from_slice(&image.pixels[from..from + image.size[0]]);
                        }
                    }
                }
            }
        }
        for id in delta.free.drain() {
            self.textures.remove(&id);
        }
    }

    fn render(&mut self, ctx: &Context, output: &FullOutput) -> Result<RgbaImage, String> {
        let scale = output.pixels_per_point;
        let screen = ctx.content_rect();
        let (width, height) = (
            (screen.width() * scale).round() as u32,
            (screen.height() * scale).round() as u32,
        );
        let mut canvas = vec![[0f32, 0.0, 0.0, 255.0]; (width * height) as usize];
        for clipped in ctx.tessellate(output.shapes.clone(), scale) {
            if let Primitive::Mesh(mesh) = &clipped.primitive {
                let texture = self.textures.get(&mesh.texture_id).ok_or("unknown texture")?;
                Painter {
                    canvas: &mut canvas,
                    width,
                    height,
                    scale,
                    texture,
                }
                .mesh(mesh, clipped.clip_rect);
            }
        }
        let bytes = canvas
            .iter()
            .flat_map(|pixel| pixel.map(|channel| channel.round() as u8))
            .collect();
        RgbaImage::from_raw(width, height, bytes).ok_or_else(|| "size".to_owned())
    }
}

struct Painter<'a> {
    canvas: &'a mut [[f32; 4]],
    width: u32,
    height: u32,
    scale: f32,
    texture: &'a ColorImage,
}

impl Painter<'_> {
    fn mesh(&mut self, mesh: &Mesh, clip: Rect) {
        let round = |at: f32, limit: u32| (at * self.scale).round().clamp(0.0, limit as f32) as i32;
        let clip = [
            round(clip.min.x, self.width),
            round(clip.min.y, self.height),
            round(clip.max.x, self.width),
            round(clip.max.y, self.height),
        ];
        for corner in mesh.indices.chunks_exact(3) {
            self.triangle([0, 1, 2].map(|nth| mesh.vertices[corner[nth] as usize]), clip);
        }
    }

    fn triangle(&mut self, mut corners: [Vertex; 3], clip: [i32; 4]) {
        let at = |vertex: &Vertex| Pos2::new(vertex.pos.x * self.scale, vertex.pos.y * self.scale);
        let mut p = [at(&corners[0]), at(&corners[1]), at(&corners[2])];
        let mut area = cross(p[0], p[1], p[2]);
        if area == 0.0 || !area.is_finite() {
            return;
        }
        if area < 0.0 {
            p.swap(1, 2);
            corners.swap(1, 2);
            area = -area;
        }
        let low = |a: f32, b: f32, c: f32, limit: i32| (a.min(b).min(c).floor() as i32).max(limit);
        let high = |a: f32, b: f32, c: f32, limit: i32| (a.max(b).max(c).ceil() as i32).min(limit);
        let (x0, x1) = (
            low(p[0].x, p[1].x, p[2].x, clip[0]),
            high(p[0].x, p[1].x, p[2].x, clip[2]),
        );
        let (y0, y1) = (
            low(p[0].y, p[1].y, p[2].y, clip[1]),
            high(p[0].y, p[1].y, p[2].y, clip[3]),
        );
        let flat = self.flat(&corners);
        for y in y0..y1 {
            for x in x0..x1 {
                let centre = Pos2::new(x as f32 + 0.5, y as f32 + 0.5);
                let edges = [
                    cross(p[1], p[2], centre),
                    cross(p[2], p[0], centre),
                    cross(p[0], p[1], centre),
                ];
                let inside = (0..3).all(|nth| {
                    edges[nth] > 0.0 || (edges[nth] == 0.0 && top_left(p[(nth + 1) % 3], p[(nth + 2) % 3]))
                });
                if inside && let Some(colour) = flat {
                    self.blend(x, y, colour);
                } else if inside {
                    self.pixel(x, y, &corners, edges.map(|edge| edge / area));
                }
            }
        }
    }

    /// The colour of a triangle that has only one: all corners alike, and one white texel.
    fn flat(&self, corners: &[Vertex; 3]) -> Option<[f32; 4]> {
        let [a, b, c] = corners;
        let alike = a.color == b.color && b.color == c.color && a.uv == b.uv && b.uv == c.uv;
        alike.then(|| {
            let texel = self.sample(a.uv.x, a.uv.y);
            let colour = a.color.to_array();
            std::array::from_fn(|channel| f32::from(colour[channel]) * texel[channel] / 255.0)
        })
    }

    fn pixel(&mut self, x: i32, y: i32, corners: &[Vertex; 3], weights: [f32; 3]) {
        let mix =
            |of: &dyn Fn(&Vertex) -> f32| (0..3).map(|nth| of(&corners[nth]) * weights[nth]).sum::<f32>();
        let texel = self.sample(mix(&|vertex| vertex.uv.x), mix(&|vertex| vertex.uv.y));
        let colour: [f32; 4] = std::array::from_fn(|channel| {
            mix(&|vertex| f32::from(vertex.color.to_array()[channel])) * texel[channel] / 255.0
        });
        self.blend(x, y, colour);
    }

    fn blend(&mut self, x: i32, y: i32, colour: [f32; 4]) {
        let under = &mut self.canvas[(y as u32 * self.width + x as u32) as usize];
        let keep = 1.0 - colour[3] / 255.0;
        for channel in 0..4 {
            under[channel] = (colour[channel] + under[channel] * keep).clamp(0.0, 255.0);
        }
    }

    fn sample(&self, u: f32, v: f32) -> [f32; 4] {
        let [width, height] = self.texture.size;
        let (x, y) = (u * width as f32 - 0.5, v * height as f32 - 0.5);
        let (fx, fy) = (x - x.floor(), y - y.floor());
        let texel = |dx: f32, dy: f32| -> [f32; 4] {
            let column = (x.floor() + dx).clamp(0.0, width as f32 - 1.0) as usize;
            let row = (y.floor() + dy).clamp(0.0, height as f32 - 1.0) as usize;
            let colour: Color32 = self.texture.pixels[row * width + column];
            colour.to_array().map(f32::from)
        };
        if fx == 0.0 && fy == 0.0 {
            return texel(0.0, 0.0);
        }
        let corners = [texel(0.0, 0.0), texel(1.0, 0.0), texel(0.0, 1.0), texel(1.0, 1.0)];
        std::array::from_fn(|channel| {
            let top = corners[0][channel] * (1.0 - fx) + corners[1][channel] * fx;
            let bottom = corners[2][channel] * (1.0 - fx) + corners[3][channel] * fx;
            top * (1.0 - fy) + bottom * fy
        })
    }
}

fn cross(a: Pos2, b: Pos2, c: Pos2) -> f32 {
    (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x)
}

fn top_left(from: Pos2, to: Pos2) -> bool {
    (from.y == to.y && to.x > from.x) || to.y < from.y
}
