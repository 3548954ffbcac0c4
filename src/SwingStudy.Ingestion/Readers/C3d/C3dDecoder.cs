using System.Buffers.Binary;
using System.Runtime.InteropServices;

namespace SwingStudy.Ingestion.Readers.C3d;

/// <summary>Turns the bytes of frames into numbers, a block of frames at a time, in buffers that are used again.</summary>
internal sealed class C3dDecoder
{
    /// <summary>Bytes of a block: what a core keeps near, once as bytes and twice as numbers.</summary>
    private const int BlockBytes = 128 * 1024;

    private readonly Stream _stream;
    private readonly C3dShape _shape;
    private readonly int _framesPerBlock;
    private readonly byte[] _bytes;
    private readonly float[] _stored;
    private readonly double[] _points;
    private readonly double[] _analog;
    private readonly double[] _factors;
    private readonly double[] _shifts;
    private readonly bool _isUnsigned;

    public C3dDecoder(Stream stream, C3dFile file)
    {
        _stream = stream;
        _shape = file.Shape;
        _framesPerBlock = (int)Math.Clamp(BlockBytes / _shape.FrameBytes, 1, _shape.Frames);
        _bytes = new byte[_framesPerBlock * _shape.FrameBytes];
        var values = (4 * _shape.Points) + _shape.AnalogPerFrame;
        _stored = new float[_framesPerBlock * values];
        _points = new double[_framesPerBlock * 4 * _shape.Points];
        var analog = _shape.Channels * _shape.AnalogSamples;
        _analog = new double[_framesPerBlock * analog];
        _factors = new double[analog];
        _shifts = new double[analog];
        for (var i = 0; i < analog; i++)
        {
            var scale = file.AnalogScales[i % _shape.Channels];
            (_factors[i], _shifts[i], _isUnsigned) = (scale.Scale, scale.Offset, scale.IsUnsigned);
        }
    }

    /// <summary>All frames, block by block.</summary>
    public IEnumerable<C3dFrames> Read()
    {
        for (long first = 0; first < _shape.Frames;)
        {
            var count = (int)Math.Min(_framesPerBlock, _shape.Frames - first);
            _stream.Position = _shape.DataStart + (first * _shape.FrameBytes);
            _stream.ReadExactly(_bytes, 0, count * _shape.FrameBytes);
            Decode(count);
            yield return new C3dFrames(first, count, _points.AsMemory(0, count * 4 * _shape.Points), _analog.AsMemory(0, count * _factors.Length));
            first += count;
        }
    }

    private void Decode(int count)
    {
        var bytes = _bytes.AsSpan(0, count * _shape.FrameBytes);
        if (_shape.Storage.IsReal)
        {
            Reals(bytes);
            for (var frame = 0; frame < count; frame++)
                RealFrame(frame);
            return;
        }

        var words = MemoryMarshal.Cast<byte, short>(bytes);
        if (_shape.Storage.Order == C3dByteOrder.Sgi)
            BinaryPrimitives.ReverseEndianness(words, words);
        for (var frame = 0; frame < count; frame++)
            IntegerFrame(words, frame);
    }

    /// <summary>All reals of the block at once: a copy, a vectorised turn of bytes, or VAX reals one by one.</summary>
    private void Reals(ReadOnlySpan<byte> bytes)
    {
        var words = MemoryMarshal.Cast<byte, int>(bytes);
        var stored = MemoryMarshal.Cast<float, int>(_stored.AsSpan(0, words.Length));
        switch (_shape.Storage.Order)
        {
            case C3dByteOrder.Intel:
                words.CopyTo(stored);
                break;
            case C3dByteOrder.Sgi:
                BinaryPrimitives.ReverseEndianness(words, stored);
                break;
            default:
                C3dWords.FromDec(MemoryMarshal.Cast<int, uint>(words), _stored.AsSpan(0, words.Length));
                break;
        }
    }

    private void RealFrame(int frame)
    {
        var stored = _stored.AsSpan(frame * ((4 * _shape.Points) + _shape.AnalogPerFrame), (4 * _shape.Points) + _shape.AnalogPerFrame);
        var points = _points.AsSpan(frame * 4 * _shape.Points, 4 * _shape.Points);
        for (var at = 0; at + 3 < points.Length; at += 4)
        {
            double x = stored[at], y = stored[at + 1], z = stored[at + 2];
            var mark = stored[at + 3];
            if (mark is < 0 and >= -1 && (short)mark < 0)
                x = y = z = double.NaN;
            Place(points, at, x, y, z, mark is >= 0 and <= short.MaxValue ? ((short)mark & 0xFF) * _shape.Scale : double.NaN);
        }

        var analog = _analog.AsSpan(frame * _factors.Length, _factors.Length);
        var values = stored.Slice(4 * _shape.Points, _factors.Length);
        for (var i = 0; i < analog.Length; i++)
            analog[i] = Finite((values[i] - _shifts[i]) * _factors[i]);
    }

    private void IntegerFrame(ReadOnlySpan<short> words, int frame)
    {
        var stored = words.Slice(frame * ((4 * _shape.Points) + _shape.AnalogPerFrame), (4 * _shape.Points) + _shape.AnalogPerFrame);
        var points = _points.AsSpan(frame * 4 * _shape.Points, 4 * _shape.Points);
        var scale = _shape.Scale;
        for (var at = 0; at + 3 < points.Length; at += 4)
        {
            var mark = stored[at + 3];
            if (mark < 0)
                Place(points, at, double.NaN, double.NaN, double.NaN, double.NaN);
            else
                Place(points, at, stored[at] * scale, stored[at + 1] * scale, stored[at + 2] * scale, (mark & 0xFF) * scale);
        }

        var analog = _analog.AsSpan(frame * _factors.Length, _factors.Length);
        var values = stored.Slice(4 * _shape.Points, _factors.Length);
        for (var i = 0; i < analog.Length; i++)
            analog[i] = Finite(((_isUnsigned ? (ushort)values[i] : values[i]) - _shifts[i]) * _factors[i]);
    }

    /// <summary>A point with a coordinate that is no number was not seen.</summary>
    private static void Place(Span<double> points, int at, double x, double y, double z, double residual)
    {
        var isSeen = double.IsFinite(x + y + z);
        points[at] = isSeen ? x : double.NaN;
        points[at + 1] = isSeen ? y : double.NaN;
        points[at + 2] = isSeen ? z : double.NaN;
        points[at + 3] = isSeen ? residual : double.NaN;
    }

    private static double Finite(double value) => double.IsFinite(value) ? value : double.NaN;
}
