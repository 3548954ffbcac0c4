using SwingStudy.Domain.Curves;
using SwingStudy.Domain.Problems;
using SwingStudy.Domain.Sources;
using SwingStudy.Domain.Units;
using SwingStudy.Ingestion.Mapping.Cells;
using SwingStudy.Ingestion.Readers.C3d;

namespace SwingStudy.Ingestion.Recordings;

/// <summary>Binds landmarks, channels and plates of a mapping to the points, analog channels and platforms of a C3D file, and reads them.</summary>
internal sealed class C3dChannels
{
    private readonly C3dFile _file;
    private readonly SourceMapping _mapping;
    private readonly List<Problem> _problems = [];
    private readonly List<Problem> _remarks = [];
    private readonly List<(string Name, int Point)> _landmarks = [];
    private readonly List<(string Channel, string Unit, int Analog, LinearScale Scale)> _channels = [];
    private readonly List<(string Plate, C3dPlatform Platform, double ForceFactor, double[] ChannelFactors)> _platforms = [];
    private readonly double _metres = double.NaN;

    public C3dChannels(C3dFile file, SourceMapping mapping)
    {
        _file = file;
        _mapping = mapping;
        var rule = mapping.Recording!;
        if (rule.Landmarks.Count > 0 || mapping.Plates.Values.Any(plate => plate.Platform is not null))
            _metres = Scale(rule.LandmarkUnit, file.PointUnit, "m", "POINT:UNITS", new FieldSource())?.Factor ?? double.NaN;
        BindLandmarks(rule);
        BindAnalog(rule);
        BindPlatforms();
        NoteUnmapped(rule);
        if (_landmarks.Count + _channels.Count + _platforms.Count == 0 && _problems.Count == 0)
            _problems.Add(RecordingMessages.LabelMissing(mapping, file.File, string.Join(", ", rule.Landmarks.Values.Concat(rule.Channels.Values.Select(field => field.Column)).Take(5)), "anything", file.PointLabels.Concat(file.AnalogLabels)));
    }

    /// <summary>Why the file is held.</summary>
    public IReadOnlyList<Problem> Problems => _problems;

    /// <summary>What should be known.</summary>
    public IReadOnlyList<Problem> Remarks => _remarks;

    /// <summary>Values that <see cref="Read"/> holds at once.</summary>
    public long Values => _file.FrameCount * ((3L * _landmarks.Count) + (Math.Max(1, _file.AnalogSamples) * (_channels.Count + (14L * _platforms.Count))));

    /// <summary>All curves in the file's own axes and canonical units.</summary>
    public List<RecordedCurve> Read()
    {
        var points = _landmarks.Select(_ => NewSeries(3, _file.FrameCount)).ToArray();
        var analogs = _channels.Select(channel => channel.Analog).Concat(_platforms.SelectMany(platform => platform.Platform.Channels)).Distinct()
            .ToDictionary(analog => analog, _ => new double[_file.FrameCount * _file.AnalogSamples]);
        foreach (var frames in _file.Frames())
        {
            for (var i = 0; i < points.Length; i++)
                CopyPoint(frames, _landmarks[i].Point, points[i]);
            foreach (var (analog, series) in analogs)
                CopyAnalog(frames, analog, series);
        }

        var curves = new List<RecordedCurve>();
        for (var i = 0; i < points.Length; i++)
            curves.AddRange(points[i].Select((series, axis) => new RecordedCurve($"{_landmarks[i].Name}_{"xyz"[axis]}", "m", _file.RateHz, series)));
        foreach (var (channel, unit, analog, scale) in _channels)
            curves.Add(new RecordedCurve(channel, unit, _file.AnalogRateHz, [.. analogs[analog].Select(scale.Apply)]));
        foreach (var (plate, platform, factor, channels) in _platforms)
            curves.AddRange(Loads(plate, platform, factor, [.. platform.Channels.Select((channel, i) => Scaled(analogs[channel], channels[i]))]));
        return curves;
    }

    private static double[][] NewSeries(int count, long length) => [.. Enumerable.Range(0, count).Select(_ => new double[length])];

    private void CopyPoint(C3dFrames frames, int point, double[][] series)
    {
        var source = frames.Points.Span;
        var stride = 4 * _file.PointLabels.Count;
        for (var frame = 0; frame < frames.Count; frame++)
        {
            for (var axis = 0; axis < 3; axis++)
                series[axis][frames.First + frame] = source[(frame * stride) + (4 * point) + axis] * _metres;
        }
    }

    private void CopyAnalog(C3dFrames frames, int analog, double[] series)
    {
        var source = frames.Analog.Span;
        var channels = _file.AnalogLabels.Count;
        var from = frames.First * _file.AnalogSamples;
        for (var sample = 0; sample < frames.Count * _file.AnalogSamples; sample++)
            series[from + sample] = source[(sample * channels) + analog];
    }

    /// <summary>Force and moment about the centre of the surface, and where that lies.</summary>
    private IEnumerable<RecordedCurve> Loads(string plate, C3dPlatform platform, double forceFactor, double[][] channels)
    {
        var series = C3dForces.Of(platform, channels);
        for (var i = 0; i < series.Length; i++)
        {
            var factor = i < 3 ? forceFactor : forceFactor * _metres;
            for (var sample = 0; sample < series[i].Length; sample++)
                series[i][sample] *= factor;
            yield return new RecordedCurve(Channels.OfPlate(plate, i < 3 ? "force" : "moment", "xyz"[i % 3]), i < 3 ? "N" : "N.m", _file.AnalogRateHz, series[i]);
        }

        var centre = new C3dPlateFrame(platform.Corners).Centre;
        for (var axis = 0; axis < 3; axis++)
            yield return new RecordedCurve(Channels.OriginOf(plate, "xyz"[axis]), "m", double.NaN, [centre[axis] * _metres]);
    }

    private void BindLandmarks(RecordingRule rule)
    {
        foreach (var (name, label) in rule.Landmarks)
        {
            if (Position(_file.PointLabels, label) is { } point)
                _landmarks.Add((name, point));
            else
                _remarks.Add(RecordingMessages.LabelMissing(_mapping, _file.File, label, name, _file.PointLabels));
        }
    }

    private void BindAnalog(RecordingRule rule)
    {
        foreach (var (name, field) in rule.Channels)
        {
            if (field.Column is not { } label || Position(_file.AnalogLabels, label) is not { } analog)
            {
                _remarks.Add(RecordingMessages.LabelMissing(_mapping, _file.File, field.Column ?? "", name, _file.AnalogLabels));
                continue;
            }

            var unit = Channels.FindInput(PlayerSides.Of(name, true))!.Unit;
            if (Scale(field.Unit, _file.AnalogUnits[analog], unit, label, field) is { } scale)
                _channels.Add((name, unit, analog, scale));
        }
    }

    private void BindPlatforms()
    {
        foreach (var (plate, geometry) in _mapping.Plates)
        {
            if (geometry.Platform is not { } number)
                continue;
            if (_file.Platforms.FirstOrDefault(known => known.Number == number) is not { } platform)
                _remarks.Add(RecordingMessages.PlatformMissing(_mapping, _file.File, plate, number));
            else if (ForceFactor(platform) is { } factor)
                _platforms.Add((plate, WithSensorsBelow(platform), factor, [.. platform.Channels.Select((_, i) => ChannelFactor(platform, i, factor))]));
        }
    }

    /// <summary>Calibrated channels (type 4) come in volts and leave in newtons; the others say their unit, or are newtons.</summary>
    private double? ForceFactor(C3dPlatform platform)
    {
        var unit = _file.AnalogUnits[platform.Channels[platform.Type == 3 ? 4 : 2]];
        return platform.Type == 4 || unit.Length == 0 ? 1 : Scale(null, unit, "N", _file.AnalogLabels[platform.Channels[2]], new FieldSource())?.Factor;
    }

    private C3dPlatform WithSensorsBelow(C3dPlatform platform)
    {
        var axes = _mapping.Recording!.Axes;
        double[] up = [.. Enumerable.Range(0, 3).Select(axis => axis == axes.SourceOf(1) ? axes.SignOf(1) : 0.0)];
        var below = platform.WithSensorsBelow((up[0], up[1], up[2]));
        if (!ReferenceEquals(below, platform))
            _remarks.Add(RecordingMessages.SensorsTurned(_file.File, platform.Number));
        return below;
    }

    /// <summary>
    /// What makes a moment of force times the unit of points, and a length of that unit, which the guide demands, of a channel that says another unit of its own.
    /// </summary>
    private double ChannelFactor(C3dPlatform platform, int channel, double forceFactor)
    {
        var (canonical, factor) = platform.Type switch
        {
            1 when channel is 3 or 4 => ("m", _metres),
            1 when channel is 5 => ("N.m", forceFactor * _metres),
            2 when channel >= 3 => ("N.m", forceFactor * _metres),
            _ => ("", 1),
        };
        return canonical.Length > 0 && UnitCatalogue.Parse(_file.AnalogUnits[platform.Channels[channel]]) is { } unit
            && UnitConversion.Between(unit, UnitCatalogue.Parse(canonical)!) is { } conversion ? conversion.Factor / factor : 1;
    }

    private static double[] Scaled(double[] series, double factor) => factor == 1 ? series : [.. series.Select(value => factor * value)];

    private void NoteUnmapped(RecordingRule rule)
    {
        var ofPlatforms = _file.Platforms.SelectMany(platform => platform.Channels).Select(channel => _file.AnalogLabels[channel]);
        var known = rule.Landmarks.Values.Concat(rule.Channels.Values.Select(field => field.Column)).Concat(_mapping.Ignore).Concat(ofPlatforms).OfType<string>().ToHashSet(StringComparer.OrdinalIgnoreCase);
        foreach (var label in _file.PointLabels.Concat(_file.AnalogLabels).Where(label => !known.Contains(label) && !known.Contains(Bare(label))))
            _remarks.Add(RecordingMessages.LabelUnmapped(_mapping, _file.File, label));
    }

    private LinearScale? Scale(string? declared, string found, string canonical, string label, FieldSource field)
    {
        var (ofMapping, ofFile, target) = (declared is null ? null : UnitCatalogue.Parse(declared), UnitCatalogue.Parse(found), UnitCatalogue.Parse(canonical)!);
        if (ofMapping is not null && ofFile is not null && UnitConversion.Between(ofMapping, ofFile) is not { Factor: > 0.999999999 and < 1.000000001 })
            _problems.Add(RecordingMessages.UnitDiffers(_mapping, _file.File, label, found, declared!));
        else if ((ofMapping ?? ofFile) is { } unit && UnitConversion.Between(unit, target) is { } conversion)
            return LinearScale.Of(field.Scale, field.Offset, field.Negate, conversion.Factor, conversion.Offset);
        else
            _problems.Add(RecordingMessages.UnitUnknown(_mapping, _file.File, label, found, canonical));
        return null;
    }

    /// <summary>A label, exactly but for case; else one that has a subject and a colon before it.</summary>
    private static int? Position(IReadOnlyList<string> labels, string label)
    {
        for (var i = 0; i < labels.Count; i++)
        {
            if (labels[i].Equals(label, StringComparison.OrdinalIgnoreCase))
                return i;
        }

        for (var i = 0; i < labels.Count; i++)
        {
            if (Bare(labels[i]).Equals(label, StringComparison.OrdinalIgnoreCase))
                return i;
        }

        return null;
    }

    private static string Bare(string label) => label[(label.LastIndexOf(':') + 1)..];
}
