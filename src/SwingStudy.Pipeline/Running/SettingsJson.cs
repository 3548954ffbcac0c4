using System.Text.Json.Serialization;
using SwingStudy.Pipeline.Analyse;
using SwingStudy.Pipeline.Analyse.Curves;
using SwingStudy.Pipeline.Analyse.Findings;
using SwingStudy.Pipeline.Analyse.Trends;
using SwingStudy.Pipeline.Link;
using SwingStudy.Pipeline.Measure;
using SwingStudy.Pipeline.Screen;

namespace SwingStudy.Pipeline.Running;

/// <summary>How the settings of stages are written, by code made when the program is built: every run writes all of them before it does anything.</summary>
[JsonSerializable(typeof(LinkSettings))]
[JsonSerializable(typeof(MeasureSettings))]
[JsonSerializable(typeof(ScreenSettings))]
[JsonSerializable(typeof(NoiseSettings))]
[JsonSerializable(typeof(EffectSettings))]
[JsonSerializable(typeof(TrendSettings))]
[JsonSerializable(typeof(CurveSettings))]
[JsonSerializable(typeof(ReliabilitySettings))]
[JsonSerializable(typeof(AgreementSettings))]
[JsonSerializable(typeof(FindingSettings))]
internal sealed partial class SettingsJson : JsonSerializerContext;
