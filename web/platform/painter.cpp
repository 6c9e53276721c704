#include "web/platform/painter.hpp"

#include <cstddef>
#include <emscripten.h>
#include <imgui.h>

// clang-format off
EM_JS(int, gl_open, (), {
    var gl = Module['canvas'].getContext('webgl', {alpha: false, depth: false, antialias: false});
    if (!gl) { return 0; }
    var program = gl.createProgram();
    [[gl.VERTEX_SHADER, 'uniform vec2 s;attribute vec2 p,u;attribute vec4 c;varying vec2 v;varying vec4 k;' +
        'void main(){v=u;k=c;gl_Position=vec4(p*s+vec2(-1,1),0,1);}'],
     [gl.FRAGMENT_SHADER, '#ifdef GL_FRAGMENT_PRECISION_HIGH\nprecision highp float;\n#else\nprecision mediump float;\n#endif\nuniform sampler2D t;varying vec2 v;varying vec4 k;' +
        'void main(){gl_FragColor=vec4(k.rgb,k.a*texture2D(t,v).a);}']].forEach(function (part) {
        var shader = gl.createShader(part[0]);
        gl.shaderSource(shader, part[1]);
        gl.compileShader(shader);
        gl.attachShader(program, shader);
    });
    ['p', 'u', 'c'].forEach(function (name, i) {
        gl.bindAttribLocation(program, i, name);
        gl.enableVertexAttribArray(i);
    });
    gl.linkProgram(program);
    gl.useProgram(program);
    gl.bindBuffer(gl.ARRAY_BUFFER, gl.createBuffer());
    gl.bindBuffer(gl.ELEMENT_ARRAY_BUFFER, gl.createBuffer());
    gl.enable(gl.BLEND);
    gl.blendFunc(gl.SRC_ALPHA, gl.ONE_MINUS_SRC_ALPHA);
    gl.bindTexture(gl.TEXTURE_2D, gl.createTexture());
    [gl.TEXTURE_MIN_FILTER, gl.TEXTURE_MAG_FILTER].forEach(function (which) { gl.texParameteri(gl.TEXTURE_2D, which, gl.LINEAR); });
    gl.pixelStorei(gl.UNPACK_ALIGNMENT, 1);
    Module['gl'] = gl;
    Module['scale'] = gl.getUniformLocation(program, 's');
    return 1;
})
EM_JS(void, gl_atlas, (const void* pixels, int w, int h), {
    var gl = Module['gl'];
    gl.texImage2D(gl.TEXTURE_2D, 0, gl.ALPHA, w, h, 0, gl.ALPHA, gl.UNSIGNED_BYTE, HEAPU8.subarray(pixels, pixels + w * h));
})
EM_JS(void, gl_list, (int w, int h, unsigned ground, const void* corners, int corner_bytes, const void* order, int order_bytes), {
    var gl = Module['gl'];
    gl.viewport(0, 0, w, h);
    gl.uniform2f(Module['scale'], 2 / w, -2 / h);
    gl.disable(gl.SCISSOR_TEST);
    gl.clearColor((ground >> 16 & 255) / 255, (ground >> 8 & 255) / 255, (ground & 255) / 255, 1);
    gl.clear(gl.COLOR_BUFFER_BIT);
    gl.enable(gl.SCISSOR_TEST);
    gl.bufferData(gl.ARRAY_BUFFER, HEAPU8.subarray(corners, corners + corner_bytes), gl.STREAM_DRAW);
    gl.bufferData(gl.ELEMENT_ARRAY_BUFFER, HEAPU8.subarray(order, order + order_bytes), gl.STREAM_DRAW);
})
EM_JS(void, gl_draw, (int x, int y, int w, int h, int first_corner_byte, int count, int first_byte), {
    var gl = Module['gl'];
    gl.vertexAttribPointer(0, 2, gl.FLOAT, false, 20, first_corner_byte);
    gl.vertexAttribPointer(1, 2, gl.FLOAT, false, 20, first_corner_byte + 8);
    gl.vertexAttribPointer(2, 4, gl.UNSIGNED_BYTE, true, 20, first_corner_byte + 16);
    gl.scissor(x, y, w, h);
    gl.drawElements(gl.TRIANGLES, count, gl.UNSIGNED_SHORT, first_byte);
})
// clang-format on

namespace torchside::web::painter {

static_assert(sizeof(ImDrawVert) == 20 && offsetof(ImDrawVert, uv) == 8 && offsetof(ImDrawVert, col) == 16);
static_assert(sizeof(ImDrawIdx) == 2);

bool open() {
    return gl_open() != 0;
}

void take(ImFontAtlas& atlas) {
    unsigned char* pixels = nullptr;
    int w = 0;
    int h = 0;
    atlas.GetTexDataAsAlpha8(&pixels, &w, &h);
    gl_atlas(pixels, w, h);
}

void paint(const ImDrawData& picture, unsigned ground) {
    const ImDrawList& list = *picture.CmdLists[0];
    const int height = static_cast<int>(picture.DisplaySize.y);
    gl_list(static_cast<int>(picture.DisplaySize.x), height, ground, list.VtxBuffer.Data,
            list.VtxBuffer.Size * static_cast<int>(sizeof(ImDrawVert)), list.IdxBuffer.Data,
            list.IdxBuffer.Size * static_cast<int>(sizeof(ImDrawIdx)));
    for (const ImDrawCmd& part : list.CmdBuffer) {
        const int left = static_cast<int>(part.ClipRect.x), bottom = static_cast<int>(part.ClipRect.w);
        const int w = static_cast<int>(part.ClipRect.z) - left, h = bottom - static_cast<int>(part.ClipRect.y);
        if (w > 0 && h > 0 && part.ElemCount > 0) { // GL counts rows from the bottom
            gl_draw(left, height - bottom, w, h, static_cast<int>(part.VtxOffset * sizeof(ImDrawVert)),
                    static_cast<int>(part.ElemCount), static_cast<int>(part.IdxOffset * sizeof(ImDrawIdx)));
        }
    }
}

} // namespace torchside::web::painter
